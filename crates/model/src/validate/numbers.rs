//! Every number of a design against the range in which it means something.

use super::Range;
use crate::fault::{Fault, FaultKind, Place};
use crate::{Bench, Body, Climate, Design, Dial, LidKind, Workmanship};

type Row = (Place, &'static str, f64, Range);

pub(super) fn check(design: &Design, faults: &mut Vec<Fault>) {
    faults.extend(latch_rows(design).into_iter().filter_map(judge));
    for (index, dial) in design.dials.iter().enumerate() {
        faults.extend(dial_rows(index, dial).into_iter().filter_map(judge));
        for (number, slot) in dial.disc.slots.iter().enumerate() {
            let place = Place::Slot(index, number);
            let rows: [Row; 3] = [
                (place, "width", slot.width, Range::Size),
                (place, "depth", slot.depth, Range::Size),
                (place, "lead_in", slot.lead_in, Range::Amount),
            ];
            faults.extend(rows.into_iter().filter_map(judge));
        }
    }
}

fn judge((place, number, value, range): Row) -> Option<Fault> {
    let (least, most) = range.limits();
    if value.is_finite() && (least..=most).contains(&value) {
        return None;
    }
    let kind = if !value.is_finite() {
        FaultKind::NotANumber { number, range }
    } else if value < least && range.is_of_sizes() {
        FaultKind::SizeNotPositive {
            number,
            value,
            range,
        }
    } else {
        FaultKind::OutOfRange {
            number,
            value,
            range,
        }
    };
    Some(Fault { place, kind })
}

fn latch_rows(design: &Design) -> Vec<Row> {
    let (plate, slider) = (&design.plate, &design.slider);
    let (tab, keeper) = (&design.tab, &design.keeper);
    let inside = &design.inside;
    let mut rows = vec![
        (Place::Plate, "width", plate.width, Range::Size),
        (Place::Plate, "depth", plate.depth, Range::Size),
        (Place::Plate, "thickness", plate.thickness, Range::Size),
        (Place::Plate, "rabbet", plate.rabbet, Range::Amount),
        (Place::Plate, "room", plate.room, Range::Amount),
        (Place::Slider, "travel", slider.travel, Range::Size),
        (
            Place::Slider,
            "guide_length",
            slider.guide_length,
            Range::Size,
        ),
        (
            Place::Slider,
            "guide_play",
            slider.guide_play,
            Range::Amount,
        ),
        (
            Place::Slider,
            "guide_at x",
            slider.guide_at.0,
            Range::Coordinate,
        ),
        (
            Place::Slider,
            "guide_at y",
            slider.guide_at.1,
            Range::Coordinate,
        ),
        (Place::Slider, "pull_at", slider.pull_at, Range::Coordinate),
        (Place::Slider, "shank", slider.shank, Range::Size),
        (Place::Slider, "thickness", slider.thickness, Range::Size),
        (Place::Slider, "below", slider.below, Range::Amount),
        (Place::Slider, "pull", slider.pull, Range::Newton),
        (Place::Slider, "friction", slider.friction, Range::Friction),
        (Place::Tab, "at", tab.at, Range::Coordinate),
        (Place::Tab, "width", tab.width, Range::Size),
        (Place::Tab, "engagement", tab.engagement, Range::Size),
        (Place::Tab, "required_hold", tab.required_hold, Range::Size),
        (Place::Keeper, "edge", keeper.edge, Range::Coordinate),
        (Place::Keeper, "width", keeper.width, Range::Size),
        (Place::Keeper, "depth", keeper.depth, Range::Size),
        (Place::Keeper, "thickness", keeper.thickness, Range::Size),
        (Place::Inside, "width", inside.width, Range::Size),
        (Place::Inside, "depth", inside.depth, Range::Size),
        (Place::Inside, "height", inside.height, Range::Size),
    ];
    rows.extend(body_rows(&design.body));
    rows.extend(bench_rows(&design.bench));
    rows.extend(workmanship_rows(&design.workmanship));
    let air: [(&'static str, &'static str, Climate); 3] = [
        ("built celsius", "built humidity", design.season.built),
        ("driest celsius", "driest humidity", design.season.driest),
        ("dampest celsius", "dampest humidity", design.season.dampest),
    ];
    for (celsius, humidity, climate) in air {
        rows.push((Place::Season, celsius, climate.celsius, Range::Celsius));
        rows.push((Place::Season, humidity, climate.humidity, Range::Humidity));
    }
    rows
}

fn body_rows(body: &Body) -> Vec<Row> {
    let (floor, hinge) = (&body.floor, &body.hinge);
    let mut rows = vec![
        (Place::Body, "thickness", body.thickness, Range::Size),
        (Place::Body, "groove", body.groove, Range::Amount),
        (Place::Body, "foot", body.foot, Range::Amount),
        (Place::Body, "floor thickness", floor.thickness, Range::Size),
        (Place::Body, "hinge length", hinge.length, Range::Size),
        (Place::Body, "hinge leaf", hinge.leaf, Range::Size),
        (
            Place::Body,
            "hinge thickness",
            hinge.thickness,
            Range::Amount,
        ),
        (Place::Body, "hinge inset", hinge.inset, Range::Amount),
    ];
    if let LidKind::Band { height } = body.lid {
        rows.push((Place::Body, "band height", height, Range::Size));
    }
    rows
}

fn bench_rows(bench: &Bench) -> Vec<Row> {
    let place = Place::Bench;
    let printer = &bench.printer;
    let mut rows = vec![
        (place, "kerf", bench.kerf, Range::Amount),
        (place, "end_trim", bench.end_trim, Range::Amount),
        (place, "rough", bench.rough, Range::Amount),
        (place, "coats", f64::from(bench.coats), Range::Coats),
        (place, "printer nozzle", printer.nozzle, Range::Size),
        (place, "printer layer", printer.layer, Range::Size),
        (place, "printer bed x", printer.bed.0, Range::Size),
        (place, "printer bed y", printer.bed.1, Range::Size),
        (place, "printer height", printer.height, Range::Size),
        (place, "printer outside", printer.outside, Range::Oversize),
        (place, "printer foot", printer.foot, Range::Amount),
        (place, "printer corner", printer.corner, Range::Amount),
        (place, "printer density", printer.density, Range::Density),
        (place, "printer filament", printer.filament, Range::Size),
    ];
    let bits = bench.bits.iter();
    rows.extend(bits.map(|bit| (place, "bits", *bit, Range::Size)));
    for board in &bench.boards {
        rows.push((place, "board length", board.length, Range::Stock));
        rows.push((place, "board width", board.width, Range::Size));
        rows.push((place, "board thickness", board.thickness, Range::Size));
        let count = f64::from(board.count);
        rows.push((place, "board count", count, Range::Count));
    }
    for hole in &printer.holes {
        rows.push((place, "hole diameter", hole.diameter, Range::Size));
        rows.push((place, "hole under", hole.under, Range::Oversize));
    }
    rows
}

fn workmanship_rows(work: &Workmanship) -> [Row; 8] {
    [
        (
            Place::Workmanship,
            "pin_place",
            work.pin_place,
            Range::Amount,
        ),
        (
            Place::Workmanship,
            "bore_place",
            work.bore_place,
            Range::Amount,
        ),
        (
            Place::Workmanship,
            "keeper_place",
            work.keeper_place,
            Range::Amount,
        ),
        (
            Place::Workmanship,
            "thickness",
            work.thickness,
            Range::Amount,
        ),
        (Place::Workmanship, "print", work.print, Range::Amount),
        (Place::Workmanship, "film", work.film, Range::Amount),
        (
            Place::Workmanship,
            "film_spread",
            work.film_spread,
            Range::Amount,
        ),
        (Place::Workmanship, "reading", work.reading, Range::Reading),
    ]
}

fn dial_rows(index: usize, dial: &Dial) -> [Row; 16] {
    let place = Place::Dial(index);
    [
        (place, "centre x", dial.centre.0, Range::Coordinate),
        (place, "centre y", dial.centre.1, Range::Coordinate),
        (place, "disc radius", dial.disc.radius, Range::Size),
        (place, "disc thickness", dial.disc.thickness, Range::Size),
        (place, "disc below", dial.disc.below, Range::Amount),
        (place, "pin offset", dial.pin.offset, Range::Coordinate),
        (place, "pin diameter", dial.pin.diameter, Range::Size),
        (place, "pin gap", dial.pin.gap, Range::Amount),
        (place, "pin height", dial.pin.height, Range::Size),
        (place, "pin free", dial.pin.free, Range::Amount),
        (place, "key apothem", dial.key.apothem, Range::Size),
        (place, "key clearance", dial.key.clearance, Range::Amount),
        (place, "bore diameter", dial.bore.diameter, Range::Size),
        (place, "shaft_play", dial.bore.shaft_play, Range::Amount),
        (place, "knob diameter", dial.knob.diameter, Range::Size),
        (place, "knob height", dial.knob.height, Range::Size),
    ]
}
