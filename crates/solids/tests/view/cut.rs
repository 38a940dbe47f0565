//! Cut faces against the section of the mesh.

use super::*;

/// Area of all that has exactly this colour, mm².
fn area_of(image: &Image, colour: [u8; 3], zoom: f64) -> f64 {
    let found = covered(image);
    let count = found
        .iter()
        .filter(|(x, y)| pixel(image, *x, *y) == colour)
        .count();
    count as f64 / (zoom * zoom)
}

#[test]
fn cut_faces_are_as_large_as_the_section_and_lie_where_it_lies() {
    let all = all();
    let look = Look {
        chosen: Some(0),
        ..PLAIN
    };
    for (name, at) in [
        ("Disc 1", 3.0),
        ("Disc 1", 12.0),
        ("Knob 1", 5.0),
        ("Fit gauge", 2.0),
    ] {
        let part = all.iter().find(|part| part.name == name).expect("a part");
        let wanted = section(&part.mesh, at);
        let around: f64 = wanted
            .outlines()
            .iter()
            .flat_map(latchwright_solids::Outline::edges)
            .map(|(a, b)| a.distance(b))
            .sum();
        // the same part on its side is cut across the axis that then stands up
        let turned = Mesh {
            points: part
                .mesh
                .points
                .iter()
                .map(|[x, y, z]| [*z, *x, *y])
                .collect(),
            triangles: part.mesh.triangles.clone(),
        };
        for (mesh, across, turn, tilt) in [
            (&part.mesh, Across::Z, 0.0, 90.0),
            (&turned, Across::X, 90.0, 0.0),
        ] {
            let scene = Scene::meshes([mesh]);
            let mut camera = Camera::fit(&scene, turn, tilt, (800, 800));
            camera.zoom *= 0.9;
            let kept = Kept::Below;
            let cut = Cut { across, at, kept };
            let image = render(&scene, &camera, Some(cut), (800, 800), &look);
            let found = area_of(&image, COLOURS.accent_tint, camera.zoom);
            // only whole pixels count, half a pixel is lost all round
            let lost = around / camera.zoom * 0.5;
            assert!(
                (found + lost - wanted.area()).abs() < lost,
                "{name} at {at}: {found:.2} + {lost:.2} of {:.2} mm²",
                wanted.area()
            );
        }
    }
}

#[test]
fn a_cut_shows_what_was_inside_and_hatches_where_material_was() {
    let outer = Mesh::cuboid(20.0, 20.0, 10.0);
    let inner = moved(&Mesh::cuboid(10.0, 10.0, 6.0), 5.0, 5.0, 2.0);
    // the same box inside out is a hollow
    let hollow = Mesh {
        points: [outer.points.clone(), inner.points.clone()].concat(),
        triangles: outer
            .triangles
            .iter()
            .copied()
            .chain(
                inner
                    .triangles
                    .iter()
                    .map(|[a, b, c]| [a + 8, c + 8, b + 8]),
            )
            .collect(),
    };
    let piece = moved(&Mesh::cuboid(4.0, 4.0, 4.0), 8.0, 8.0, 2.0);
    let scene = Scene::meshes([&hollow, &piece]);
    let camera = Camera {
        centre: [10.0, 10.0, 0.0],
        ..above()
    };
    let cut = |at| {
        let kept = Kept::Below;
        let across = Across::Z;
        Some(Cut { across, at, kept })
    };
    let seen = |at| pick(&scene, &camera, cut(at), (100, 100), 50.5, 50.5);
    assert_eq!(pick(&scene, &camera, None, (100, 100), 50.5, 50.5), Some(0));
    assert_eq!(seen(9.0), Some(0));
    assert_eq!(seen(7.0), Some(1), "the piece in the hollow");
    assert_eq!(seen(5.0), Some(1), "the piece, cut");
    assert_eq!(seen(-1.0), None, "all is taken away");
    let look = Look {
        chosen: Some(0),
        ..PLAIN
    };
    let image = render(&scene, &camera, cut(7.0), (100, 100), &look);
    let face = area_of(&image, COLOURS.accent_tint, camera.zoom);
    assert_eq!(face, 20.0 * 20.0 - 10.0 * 10.0);
    let hatched = render(
        &Scene::meshes([&outer]),
        &camera,
        cut(8.0),
        (100, 100),
        &INKED,
    );
    let blue = covered(&hatched)
        .iter()
        .filter(|(x, y)| {
            let [red, _, blue] = pixel(&hatched, *x, *y).map(i32::from);
            blue > red + 60
        })
        .count();
    // lines of one pixel, some seven pixels apart, on 80 × 80 pixels
    assert!((500..2000).contains(&blue), "{blue}");
    let nowhere = render(&scene, &camera, cut(f64::NAN), (100, 100), &INKED);
    assert_eq!(nowhere, render(&scene, &camera, None, (100, 100), &INKED));
}

#[test]
fn a_cut_seen_from_behind_shows_no_cut_face() {
    let scene = Scene::meshes([&Mesh::cuboid(20.0, 20.0, 10.0)]);
    let look = Look {
        chosen: Some(0),
        ..PLAIN
    };
    let from = |tilt| {
        let camera = Camera {
            tilt,
            centre: [10.0, 10.0, 5.0],
            ..above()
        };
        let kept = Kept::Below;
        let cut = Cut {
            across: Across::Z,
            at: 5.0,
            kept,
        };
        let image = render(&scene, &camera, Some(cut), (100, 100), &look);
        area_of(&image, COLOURS.accent_tint, camera.zoom)
    };
    assert_eq!(from(90.0), 400.0);
    assert_eq!(from(-90.0), 0.0);
    let camera = Camera {
        tilt: -30.0,
        ..above()
    };
    assert_eq!(Cut::facing(Across::Z, 5.0, &camera).kept, Kept::Above);
}
