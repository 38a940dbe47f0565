//! Every design that comes with the program can be printed, with all its labels.

use latchwright_session::demos::DEMOS;
use latchwright_solids::part::Kind;
use latchwright_solids::{Options, Warning, files, parts};

#[test]
fn every_demo_gives_all_its_parts_within_bounds() {
    for demo in DEMOS {
        let design = demo.design().unwrap();
        let parts = parts(&design, &Options::default())
            .unwrap_or_else(|faults| panic!("{}: {faults:?}", demo.name));
        for kind in [Kind::Disc, Kind::Knob, Kind::Ring, Kind::Washer] {
            let count = parts.iter().filter(|part| part.kind == kind).count();
            assert_eq!(count, design.dials.len(), "{}: {kind:?}", demo.name);
        }
        for part in &parts {
            let name = format!("{}, {}", demo.name, part.name);
            for warning in &part.warnings {
                assert!(!matches!(warning, Warning::BareMarks { .. }), "{name}");
            }
            // chords of 0.01 mm need no more
            let triangles = part.mesh.triangles.len();
            assert!(triangles < 40_000, "{name}: {triangles} triangles");
            // the jig of the longest row of dials is the heaviest
            assert!(part.mass_g < 65.0, "{name}: {} g", part.mass_g);
        }
        assert!(
            files(&design, &Options::default(), demo.name, |warning| {
                format!("{warning:?}")
            })
            .is_ok()
        );
    }
}
