//! Numbers that are none, sizes without end, meshes that are no solids.

use super::*;

#[test]
fn no_camera_size_or_mesh_brings_it_down() {
    let cuboid = Mesh::cuboid(10.0, 10.0, 10.0);
    let odd = Mesh {
        points: vec![[f64::NAN; 3], [1e300, 0.0, 0.0], [0.0, 1.0, f64::INFINITY]],
        triangles: vec![[0, 1, 2], [2, 1, 0], [7, 8, 9], [0, 0, 0]],
    };
    let scenes = [
        Scene::default(),
        Scene::parts(&[]),
        Scene::meshes([&Mesh::default()]),
        Scene::meshes([&cuboid, &odd]),
        Scene::bed(
            &[],
            &latchwright_solids::plate_up::Bed::default(),
            (f64::NAN, 1e9),
        ),
        Scene::default().with_body(Extent {
            low: [f64::NAN; 3],
            high: [f64::INFINITY; 3],
        }),
    ];
    let odd = [f64::NAN, f64::INFINITY, -1e300, 0.0, 1e-300, 45.0, 1e6];
    for scene in &scenes {
        for one in odd {
            for two in odd {
                let camera = Camera {
                    turn: one,
                    tilt: two,
                    zoom: one,
                    centre: [two, one, two],
                };
                let cut = Cut {
                    across: Across::Y,
                    at: two,
                    kept: Kept::Above,
                };
                let look = Look {
                    line: one,
                    chosen: Some(usize::MAX),
                    ..PLAIN
                };
                let image = render(scene, &camera, Some(cut), (40, 30), &look);
                assert_eq!(image.rgba.len(), 40 * 30 * 4);
                assert!(image.rgba.chunks(4).all(|pixel| pixel[3] == 255));
                pick(scene, &camera, Some(cut), (40, 30), one, two);
                anchors(scene, &camera, Some(cut), (40, 30));
                let fitted = Camera::fit(scene, one, two, (40, 30));
                assert_eq!(fitted, fitted.tamed());
            }
        }
        for (size, wanted) in [
            ((0, 10), (0, 0)),
            ((10, 0), (0, 0)),
            ((1, 1), (1, 1)),
            ((u32::MAX, 2), (8192, 2)),
            ((2, u32::MAX), (2, 8192)),
        ] {
            let image = render(scene, &above(), None, size, &INKED);
            assert_eq!((image.width, image.height), wanted);
            assert_eq!(image.rgba.len(), (wanted.0 * wanted.1 * 4) as usize);
        }
    }
}
