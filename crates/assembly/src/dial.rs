//! What belongs to one dial along its axis: washer, shaft, post, star, and the screw that joins disc and knob.

use latchwright_model::{Design, Dial};

use crate::screw::{JOINING, LENGTHS, Reach, SINK};

/// Clear distance between knob and plate, mm: the end play of a dial.
///
/// # Source
/// Common practice, no source.
pub const KNOB_GAP: f64 = 0.3;
/// Length by which the post stops short of the bottom of its star, mm: a bridged roof sags.
///
/// # Source
/// Common practice, no source.
pub const POST_SHORT: f64 = 0.5;
/// The thinnest face over the star, mm.
///
/// # Source
/// Common practice, no source: five layers carry a bridge of a centimetre.
pub const FACE: f64 = 1.2;
/// Thread in the knob that holds, mm, at least: a diameter, in plastic all round; common practice, no source.
pub const LEAST_THREAD: f64 = JOINING.shank;
/// What stays of the disc under a head that is sunk, mm, at least: common practice, no source.
const UNDER_HEAD: f64 = 1.5;
/// Play of the shaft in its washer, mm per side: common practice, no source.
const WASHER_PLAY: f64 = 0.3;
/// How far the washer reaches beyond the bore, mm: common practice, no source.
const WASHER_REACH: f64 = 4.0;
/// What the washer leaves free of the disc's rim, mm: common practice, no source.
const WITHIN_RIM: f64 = 0.5;

/// How deep the star in the knob is, mm: six tenths of the knob, 4 to 8. The post ends just below.
pub fn key_depth(dial: &Dial) -> f64 {
    (dial.knob.height * 0.6).clamp(4.0, 8.0)
}

/// Diameter of the shaft that turns in the bore, mm.
pub fn shaft_diameter(dial: &Dial) -> f64 {
    dial.bore.diameter - 2.0 * dial.bore.shaft_play
}

/// Length of the shaft from the disc's upper face to the shoulder that the knob sits on, mm.
pub fn shaft_length(design: &Design, dial: &Dial) -> f64 {
    dial.disc.below + design.plate.thickness + KNOB_GAP
}

/// Length of the post over that shoulder, mm.
pub fn post_length(dial: &Dial) -> f64 {
    key_depth(dial) - POST_SHORT
}

/// The ring between plate and disc, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Washer {
    /// Diameter of its hole.
    pub inner: f64,
    /// Outer diameter.
    pub outer: f64,
    /// Thickness: whole layers of the printer, no more than there is room.
    pub thickness: f64,
}

/// The washer of `dial`; `None` where less than a layer lies between plate and disc.
pub fn washer(design: &Design, dial: &Dial) -> Option<Washer> {
    let layer = design.bench.printer.layer;
    let layers = (dial.disc.below / layer + 1e-9).floor();
    let outer = (dial.bore.diameter / 2.0 + WASHER_REACH).min(dial.disc.radius - WITHIN_RIM);
    (layer > 0.0 && layers >= 1.0).then(|| Washer {
        inner: shaft_diameter(dial) + 2.0 * WASHER_PLAY,
        outer: 2.0 * outer,
        thickness: layers * layer,
    })
}

/// The screw that joins a disc and its knob: its head sunk in the disc's underside, through shaft and post, its thread in
/// the knob's face over the star.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DiscScrew {
    /// From the disc's underside to where the thread begins, and what there is for the thread, mm.
    pub reach: Reach,
    /// Its length, mm; `None` where no length that is sold holds and stays inside: disc and knob are then glued.
    pub length: Option<f64>,
    /// How much deeper than level its head is sunk, mm, so that a length that is sold has thread enough.
    pub deeper: f64,
}

/// What holds disc and knob of `dial` together; `marks` is how deep marks are sunk into the knob's face, mm.
pub fn disc_screw(design: &Design, dial: &Dial, marks: f64) -> DiscScrew {
    let through = dial.disc.thickness + shaft_length(design, dial) + key_depth(dial);
    let reach = Reach {
        through,
        into: pilot_depth(dial, marks),
    };
    let end = through + reach.into;
    let deepest = (dial.disc.thickness - SINK - UNDER_HEAD).max(0.0);
    let found = LENGTHS.iter().rev().find_map(|length| {
        let deeper = (through + LEAST_THREAD - length).max(0.0);
        (deeper <= deepest && deeper + length <= end + 1e-9).then_some((*length, deeper))
    });
    DiscScrew {
        reach,
        length: found.map(|(length, _)| length),
        deeper: found.map_or(0.0, |(_, deeper)| deeper),
    }
}

/// How deep the knob may be bored over its star for the screw's thread, mm.
pub fn pilot_depth(dial: &Dial, marks: f64) -> f64 {
    (dial.knob.height - key_depth(dial) - FACE - marks).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_screw_of_the_usual_dial_reaches_its_knob_and_stays_inside() {
        let design = Design::default();
        let dial = &design.dials[0];
        let screw = disc_screw(&design, dial, 0.0);
        let length = screw.length.unwrap();
        let thread = length + screw.deeper - screw.reach.through;
        assert!((25.0..36.0).contains(&length), "{screw:?}");
        assert!(thread >= LEAST_THREAD - 1e-9 && thread <= screw.reach.into + 1e-9);
    }

    #[test]
    fn whatever_the_plate_a_screw_that_is_told_has_thread_and_does_not_come_out() {
        let mut design = Design::default();
        let mut told = 0;
        for tenths in 60..300 {
            design.plate.thickness = f64::from(tenths) / 10.0;
            let screw = disc_screw(&design, &design.dials[0], 0.0);
            let Some(length) = screw.length else { continue };
            told += 1;
            let thread = length + screw.deeper - screw.reach.through;
            assert!(thread >= LEAST_THREAD - 1e-9 && thread <= screw.reach.into + 1e-9);
        }
        // between an inch and two the lengths are a quarter of an inch apart: some plates have none
        assert!(told > 180, "{told}");
    }

    #[test]
    fn a_washer_is_whole_layers_and_no_thicker_than_its_room() {
        let mut design = Design::default();
        design.dials[0].disc.below = 0.5;
        let found = washer(&design, &design.dials[0]).unwrap();
        assert!((found.thickness - 0.4).abs() < 1e-9);
        design.dials[0].disc.below = 0.1;
        assert_eq!(washer(&design, &design.dials[0]), None);
    }
}
