//! The designs that come with the program.

use latchwright_model::Design;

use crate::format::{self, ReadError};

/// A design that comes with the program.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Demo {
    /// Short name, as the file without its ending.
    pub name: &'static str,
    /// One line on what it shows.
    pub about: &'static str,
    /// The file.
    pub text: &'static str,
}

impl Demo {
    /// Reads the design.
    pub fn design(&self) -> Result<Design, ReadError> {
        format::read(self.text.as_bytes()).map(|loaded| loaded.design)
    }
}

/// All of them, the one that is shown first in front.
pub const DEMOS: [Demo; 5] = [
    Demo {
        name: "tea-box",
        about: "Three dials of eight, square keys: the box to start from",
        text: include_str!("../../../demo/tea-box.latch.ron"),
    },
    Demo {
        name: "letters-chest",
        about: "Four dials of six letters on triangular keys",
        text: include_str!("../../../demo/letters-chest.latch.ron"),
    },
    Demo {
        name: "toy-post-box",
        about: "Two dials of twelve pictures, for a child",
        text: include_str!("../../../demo/toy-post-box.latch.ron"),
    },
    Demo {
        name: "two-ways",
        about: "Not proven: a second slot lets two settings open",
        text: include_str!("../../../demo/two-ways.latch.ron"),
    },
    Demo {
        name: "spice-box-inch",
        about: "Three dials of eight in inches",
        text: include_str!("../../../demo/spice-box-inch.latch.ron"),
    },
];

/// The demo of this name.
pub fn demo(name: &str) -> Option<&'static Demo> {
    DEMOS.iter().find(|demo| demo.name == name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_demo_is_complete_and_stands_as_the_program_would_write_it() {
        for demo in DEMOS {
            let loaded = format::read(demo.text.as_bytes()).unwrap();
            assert!(
                loaded.notices.is_empty(),
                "{}: {:?}",
                demo.name,
                loaded.notices
            );
            assert!(
                loaded.unknown.is_empty(),
                "{}: {:?}",
                demo.name,
                loaded.unknown
            );
            assert_eq!(
                format::write(&loaded.design).unwrap(),
                demo.text,
                "{}",
                demo.name
            );
        }
    }

    #[test]
    fn every_demo_proves_as_it_says() {
        for demo in DEMOS {
            let proof = latchwright_proof::prove(&demo.design().unwrap());
            assert_eq!(proof.proven, demo.name != "two-ways", "{}", demo.name);
        }
        let twice = latchwright_proof::prove(&demo("two-ways").unwrap().design().unwrap());
        assert_eq!((twice.settings.opens, twice.settings.unsure), (2, 0));
        let only_that: Vec<_> = twice
            .checks
            .iter()
            .filter(|check| check.verdict != latchwright_proof::CheckVerdict::Passes)
            .map(|check| check.kind.code())
            .collect();
        assert_eq!(only_that.len(), 1, "{only_that:?}");
    }
}
