//! Boxes of known size, and what must not change when one turns or mirrors.

use super::*;

#[test]
fn a_box_covers_exactly_its_own_pixels_from_every_square_side() {
    let scene = Scene::meshes([&Mesh::cuboid(10.0, 20.0, 5.0)]);
    let centre = [5.0, 10.0, 2.5];
    // turn and tilt, then the size that is seen, mm
    for (turn, tilt, wide, tall) in [
        (0.0, 90.0, 10, 20),
        (90.0, 90.0, 20, 10),
        (0.0, 0.0, 10, 5),
        (90.0, 0.0, 20, 5),
        (180.0, 0.0, 10, 5),
        (0.0, -90.0, 10, 20),
    ] {
        let camera = Camera {
            turn,
            tilt,
            zoom: 4.0,
            centre,
        };
        let image = render(&scene, &camera, None, (120, 100), &PLAIN);
        let found = covered(&image);
        let (left, top) = (60 - wide * 2, 50 - tall * 2);
        let wanted: Vec<(u32, u32)> = (top..top + tall * 4)
            .flat_map(|y| (left..left + wide * 4).map(move |x| (x, y)))
            .collect();
        assert_eq!(found, wanted, "turn {turn}, tilt {tilt}");
    }
}

#[test]
fn what_is_nearer_hides_what_is_farther_whichever_comes_first() {
    let cuboid = Mesh::cuboid(10.0, 10.0, 1.0);
    let (low, high) = (cuboid.clone(), moved(&cuboid, 2.0, 0.0, 4.0));
    let seen = |meshes: [&Mesh; 2], tilt: f64, x: f64| {
        let camera = Camera { tilt, ..above() };
        let x = 50.0 + x * 4.0;
        pick(&Scene::meshes(meshes), &camera, None, (100, 100), x, 30.5)
    };
    // between x = 2 and 10 both lie one over the other
    assert_eq!(seen([&low, &high], 90.0, 5.1), Some(1));
    assert_eq!(seen([&high, &low], 90.0, 5.1), Some(0));
    assert_eq!(seen([&low, &high], 90.0, 1.1), Some(0));
    assert_eq!(seen([&low, &high], 90.0, 11.1), Some(1));
    assert_eq!(seen([&low, &high], 90.0, 12.1), None);
    let below = Camera {
        tilt: -90.0,
        ..above()
    };
    let scene = Scene::meshes([&low, &high]);
    let under = |x: f64| pick(&scene, &below, None, (100, 100), 50.0 + x * 4.0, 70.5);
    assert_eq!(under(5.1), Some(0));
    assert_eq!(under(11.1), Some(1));
}

/// The middles of a box's edges in the picture, and whether each can be seen.
fn edges_of_a_box(camera: &Camera, size: [f64; 3]) -> Vec<([f64; 2], bool)> {
    let (turn, tilt) = (camera.turn.to_radians(), camera.tilt.to_radians());
    let on_paper = |place: [f64; 3]| {
        let [x, y, z] = [0, 1, 2].map(|axis| place[axis] - camera.centre[axis]);
        let right = x * turn.cos() + y * turn.sin();
        let back = y * turn.cos() - x * turn.sin();
        let up = back * tilt.sin() + z * tilt.cos();
        [100.0 + right * camera.zoom, 100.0 - up * camera.zoom]
    };
    let mut found = Vec::new();
    for axis in 0..3 {
        for ends in 0..4 {
            let (one, two) = ((axis + 1) % 3, (axis + 2) % 3);
            let mut place = size.map(|length| length / 2.0);
            place[one] = if ends & 1 == 0 { 0.0 } else { size[one] };
            place[two] = if ends & 2 == 0 { 0.0 } else { size[two] };
            // from the front right above, the corner at the left, behind and below is hidden:
            // all edges that lie on its three faces only
            let hidden = [(0, 0.0), (1, size[1]), (2, 0.0)]
                .iter()
                .filter(|(at, value)| *at != axis && place[*at] == *value)
                .count();
            found.push((on_paper(place), hidden < 2));
        }
    }
    found
}

#[test]
fn nine_edges_of_a_box_are_drawn_and_the_three_behind_it_are_not() {
    let size = [11.0, 14.0, 9.0];
    let camera = Camera {
        turn: 33.0,
        tilt: 28.0,
        zoom: 8.0,
        centre: size.map(|length| length / 2.0),
    };
    let scene = Scene::meshes([&Mesh::cuboid(size[0], size[1], size[2])]);
    let image = render(&scene, &camera, None, (200, 200), &INKED);
    let edges = edges_of_a_box(&camera, size);
    assert_eq!(edges.iter().filter(|(_, seen)| *seen).count(), 9);
    for ([x, y], seen) in edges {
        // the darkest of the nine pixels around
        let darkest = (-1..=1)
            .flat_map(|down| (-1..=1).map(move |right| (right, down)))
            .map(|(right, down)| {
                let at = |value: f64, by: i32| whole(value + f64::from(by));
                pixel(&image, at(x, right), at(y, down))[0]
            })
            .min();
        assert_eq!(darkest < Some(110), seen, "{x:.1} {y:.1}: {darkest:?}");
    }
}

#[test]
fn a_full_turn_gives_the_same_picture_and_so_does_a_painter_that_was_used_before() {
    let scene = Scene::assembly(&all(), 0.3);
    let mut painter = Painter::default();
    painter.render(&scene, &above(), None, (333, 77), &INKED);
    for turn in [0.0, 30.0, 101.5] {
        let camera = Camera::fit(&scene, turn, 25.0, (300, 200));
        let once = render(&scene, &camera, None, (300, 200), &INKED);
        assert!(covered(&once).len() > 5000);
        for turns in [-360.0, 360.0, 7200.0] {
            let on = Camera {
                turn: turn + turns,
                ..camera
            };
            assert_eq!(painter.render(&scene, &on, None, (300, 200), &INKED), once);
        }
    }
}

#[test]
fn a_mirrored_part_from_the_mirrored_side_gives_the_mirrored_picture() {
    for part in all().iter().take(5) {
        let (mesh, mirrored) = (&part.mesh, part.mesh.mirrored());
        let camera = Camera {
            zoom: 5.03,
            turn: 21.0,
            tilt: 33.0,
            ..above()
        };
        let from_there = Camera {
            turn: -21.0,
            ..camera
        };
        let one = render(&Scene::meshes([mesh]), &camera, None, (400, 300), &PLAIN);
        let two = render(
            &Scene::meshes([&mirrored]),
            &from_there,
            None,
            (400, 300),
            &PLAIN,
        );
        let here = covered(&one);
        let there = covered(&two);
        assert!(here.len() > 1000, "{}", part.name);
        let wrong = here
            .iter()
            .filter(|(x, y)| pixel(&two, 399 - x, *y) == COLOURS.paper)
            .count();
        // corners that fall right between two steps of a sample may round to another side
        assert!(
            wrong <= 3 && here.len().abs_diff(there.len()) <= 3,
            "{}",
            part.name
        );
    }
}

#[test]
fn lines_of_the_chosen_part_are_wider_and_not_only_of_another_colour() {
    let scene = Scene::meshes([&Mesh::cuboid(10.0, 10.0, 10.0)]);
    let camera = Camera {
        centre: [5.0, 5.0, 0.0],
        ..above()
    };
    // how much of the paper beside the box its outline darkens
    let beside = |chosen| {
        let look = Look { chosen, ..INKED };
        let image = render(&scene, &camera, None, (100, 100), &look);
        let row = (0..30).map(|x| 255 - u32::from(pixel(&image, x, 50)[1]));
        row.sum::<u32>()
    };
    let (plain, chosen) = (beside(None), beside(Some(0)));
    assert!(plain > 150 && chosen * 5 > plain * 6, "{plain} {chosen}");
}

#[test]
fn lines_of_what_is_hidden_are_not_drawn_and_of_what_sticks_out_only_that_much() {
    let lid = moved(&Mesh::cuboid(20.0, 20.0, 1.0), -10.0, -10.0, 5.0);
    let picture = |meshes: &[&Mesh]| {
        let scene = Scene::meshes(meshes.iter().copied());
        render(&scene, &above(), None, (160, 160), &INKED)
    };
    let alone = picture(&[&lid]);
    let under = moved(&Mesh::cuboid(8.0, 8.0, 3.0), -4.0, -4.0, 0.0);
    assert_eq!(picture(&[&under, &lid]), alone);
    let out = moved(&under, 10.0, 0.0, 0.0);
    let both = picture(&[&out, &lid]);
    let differ: Vec<u32> = (0..160)
        .flat_map(|y| (0..160).map(move |x| (x, y)))
        .filter(|(x, y)| pixel(&both, *x, *y) != pixel(&alone, *x, *y))
        .map(|(x, _)| x)
        .collect();
    // the lid ends at pixel 120, what sticks out at 136, lines reach a pixel further
    assert_eq!(differ.iter().max(), Some(&136));
    assert!(
        differ.iter().min() >= Some(&118),
        "{:?}",
        differ.iter().min()
    );
}
