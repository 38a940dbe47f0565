//! Whole designs: picking, names, parts pulled apart, the bed, fitting.

use latchwright_solids::plate_up::Bed;

use super::*;

#[test]
fn pick_agrees_with_what_is_drawn_in_the_colours_of_the_chosen_part() {
    let all = all();
    let scene = Scene::assembly(&all, 0.6);
    let size = (240, 180);
    let camera = Camera::fit(&scene, 25.0, 30.0, size);
    let cut = Some(Cut {
        across: Across::Y,
        at: 96.0,
        kept: Kept::Above,
    });
    for cut in [None, cut] {
        let look = |chosen| Look { chosen, ..PLAIN };
        let plain = render(&scene, &camera, cut, size, &PLAIN);
        let chosen = [0, 2, 6, 12].map(|part| {
            let image = render(&scene, &camera, cut, size, &look(Some(part)));
            (part, image)
        });
        let mut looked_at = 0;
        let rows = (1..179).step_by(5);
        for (x, y) in rows.flat_map(|y| (1..239).step_by(5).map(move |x| (x, y))) {
            let (px, py) = (f64::from(x) + 0.5, f64::from(y) + 0.5);
            let found = pick(&scene, &camera, cut, size, px, py);
            for (part, image) in &chosen {
                let around = [(0, 0), (2, 0), (0, 2), (2, 2), (1, 1)]
                    .map(|(right, down)| (x - 1 + right, y - 1 + down))
                    .iter()
                    .filter(|(x, y)| pixel(image, *x, *y) != pixel(&plain, *x, *y))
                    .count();
                if around == 5 || around == 0 {
                    assert_eq!(found == Some(*part), around == 5, "{x} {y}");
                    looked_at += usize::from(around == 5);
                }
            }
        }
        assert!(looked_at > 30, "{looked_at}");
    }
    assert_eq!(pick(&scene, &camera, None, size, -1.0, 5.0), None);
    assert_eq!(pick(&scene, &camera, None, size, f64::NAN, 5.0), None);
    assert_eq!(pick(&scene, &camera, None, size, 240.0, 5.0), None);
}

#[test]
fn names_begin_on_their_parts() {
    let all = all();
    let scene = Scene::assembly(&all, 1.0);
    for size in [(800, 600), (1333, 701), (90, 60)] {
        let camera = Camera::fit(&scene, 25.0, 25.0, size);
        let anchors = anchors(&scene, &camera, None, size);
        // 13 of 15 are no tools; the keeper is of wood
        assert_eq!(anchors.len(), 13, "{size:?}");
        for (part, x, y) in anchors {
            let found = pick(&scene, &camera, None, size, x, y);
            assert_eq!(found, Some(part), "{size:?} {x} {y}");
        }
    }
    assert_eq!(anchors(&scene, &above(), None, (0, 5)), []);
}

#[test]
fn a_dial_that_is_pulled_apart_stands_in_its_order_and_nothing_touches() {
    let all = all();
    let scene = Scene::assembly(&all, 1.0);
    let size = (600, 600);
    let camera = Camera::fit(&scene, 0.0, 0.0, size);
    let heights: Vec<(usize, f64)> = anchors(&scene, &camera, None, size)
        .into_iter()
        .map(|(part, _, y)| (part, y))
        .collect();
    let of = |name: &str| {
        let part = all.iter().position(|part| part.name == name);
        heights
            .iter()
            .find(|(found, _)| Some(*found) == part)
            .expect(name)
            .1
    };
    // the slider's knob and the keeper stand before the second
    for dial in [1, 3] {
        let order = ["Knob", "Ring", "Washer", "Disc"].map(|what| of(&format!("{what} {dial}")));
        assert!(order.is_sorted(), "{order:?}");
        // clear paper between each two, seen from the side
        let image = render(&scene, &camera, None, size, &PLAIN);
        let x = whole(anchors(&scene, &camera, None, size)[(dial - 1) * 4].1);
        let column: Vec<bool> = (0..600)
            .map(|y| pixel(&image, x, y) == COLOURS.paper)
            .collect();
        let parts = column.windows(2).filter(|pair| pair[0] && !pair[1]).count();
        assert_eq!(parts, 4, "dial {dial}");
    }
    let mut together = scene;
    together.pull(f64::NAN);
    assert_eq!(together, Scene::assembly(&all, 0.0));
    let height = together.extent().size()[2];
    // disc's underside to the knob's top, see the section of the lid
    assert!((30.0..45.0).contains(&height), "{height}");
}

#[test]
fn squares_of_ten_millimetres_lie_under_the_parts_and_are_not_seen_from_beneath() {
    let bed = (220.0, 220.0);
    let camera = Camera {
        centre: [110.0, 110.0, 0.0],
        ..above()
    };
    let bluish = |image: &Image, x: u32, y: u32| {
        let [red, _, blue] = pixel(image, x, y).map(i32::from);
        blue > red + 20
    };
    let size = (1000, 1000);
    let image = render(
        &Scene::bed(&[], &Bed::default(), bed),
        &camera,
        None,
        size,
        &INKED,
    );
    // the bed is 880 pixels wide, a square 40
    let lines: Vec<u32> = (1..1000)
        .filter(|x| bluish(&image, *x, 935) && !bluish(&image, *x - 1, 935))
        .collect();
    let wanted: Vec<u32> = (0..23).map(|line| 59 + line * 40).collect();
    assert_eq!(lines, wanted);
    let all = all();
    let beds = plate_up(&all, &Design::default().bench.printer);
    let scene = Scene::bed(&all, &beds[0], bed);
    let blue = |tilt: f64| {
        let image = render(&scene, &Camera { tilt, ..camera }, None, size, &INKED);
        let there = covered(&image);
        there.iter().filter(|(x, y)| bluish(&image, *x, *y)).count()
    };
    assert!((30_000..80_000).contains(&blue(90.0)), "{}", blue(90.0));
    assert_eq!(blue(-90.0), 0);
}

#[test]
fn a_fitted_scene_fills_its_picture_without_leaving_it() {
    let scene = Scene::parts(&all()).with_body(Extent::default());
    for (turn, tilt, size) in [(0.0, 90.0, (400, 300)), (40.0, 20.0, (300, 400))] {
        let camera = Camera::fit(&scene, turn, tilt, size);
        let found = covered(&render(&scene, &camera, None, size, &INKED));
        let left = found.iter().map(|(x, _)| *x).min().expect("a picture");
        let top = found.iter().map(|(_, y)| *y).min().expect("a picture");
        let near = |border: u32, side: u32| border.abs_diff(side * 6 / 100) <= 2;
        assert!(left > 0 && top > 0);
        assert!(near(left, size.0) || near(top, size.1), "{left} {top}");
    }
}
