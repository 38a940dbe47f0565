//! The sentence of every kind of fault, in millimetres and in inches.

use latchwright_model::{Climate, Place};

use super::*;

fn in_units(place: Place, kind: FaultKind, units: Units) -> String {
    fault_sentence(&Fault { place, kind }, units)
}

/// The same in both units: nothing in it is a length.
#[track_caller]
fn always(place: Place, kind: FaultKind, sentence: &str) {
    both(place, kind, sentence, sentence);
}

#[track_caller]
fn both(place: Place, kind: FaultKind, mm: &str, inch: &str) {
    assert_eq!(in_units(place, kind.clone(), Units::Millimetre), mm);
    assert_eq!(in_units(place, kind, Units::Inch), inch);
}

#[test]
fn a_number_is_held_against_its_range_in_the_makers_unit() {
    let (number, range) = ("width", Range::Size);
    both(
        Place::Tab,
        FaultKind::NotANumber { number, range },
        "tab: `width` is not a number; give a value from 0.001 to 5000 mm",
        "tab: `width` is not a number; give a value from 0.00004 to 196.85039 in",
    );
    let value = -12.7;
    both(
        Place::Slot(0, 1),
        FaultKind::SizeNotPositive {
            number,
            value,
            range,
        },
        "dial 1, slot 2: `width` is -12.7 mm, but a size must be above 0; give a value from 0.001 to \
         5000 mm",
        "dial 1, slot 2: `width` is -0.5 in, but a size must be above 0; give a value from 0.00004 to \
         196.85039 in",
    );
    both(
        Place::Slider,
        FaultKind::OutOfRange {
            number: "pull_at",
            value: 7620.0,
            range: Range::Coordinate,
        },
        "slider: `pull_at` is 7620 mm, outside -5000 to 5000 mm; give a value from -5000 to 5000 mm",
        "slider: `pull_at` is 300 in, outside -196.85039 to 196.85039 in; give a value from -196.85039 \
         to 196.85039 in",
    );
}

#[test]
fn a_limit_in_inches_is_within_the_range() {
    for range in [
        Range::Size,
        Range::Amount,
        Range::Coordinate,
        Range::Oversize,
        Range::Stock,
    ] {
        let (least, most) = range.limits();
        let span = Span::of(range, Units::Inch);
        let (from, to) = (span.least * MM_PER_INCH, span.most * MM_PER_INCH);
        assert!(least <= from && from < least + 1e-3, "{range:?}: {from}");
        assert!(to <= most && to > most - 1e-3, "{range:?}: {to}");
    }
}

#[test]
fn what_is_no_length_is_told_in_its_own_unit() {
    for (number, value, range, sentence) in [
        (
            "reading",
            91.0,
            Range::Reading,
            "`reading` is 91°, outside 0 to 90°; give a value from 0 to 90°",
        ),
        (
            "built humidity",
            101.5,
            Range::Humidity,
            "`built humidity` is 101.5 %, outside 0 to 100 %; give a value from 0 to 100 %",
        ),
        (
            "built celsius",
            -40.0,
            Range::Celsius,
            "`built celsius` is -40 °C, outside -30 to 60 °C; give a value from -30 to 60 °C",
        ),
        (
            "pull",
            2000.0,
            Range::Newton,
            "`pull` is 2000 N, outside 0 to 1000 N; give a value from 0 to 1000 N",
        ),
        (
            "friction",
            0.0,
            Range::Friction,
            "`friction` is 0, outside 0.01 to 2; give a value from 0.01 to 2",
        ),
        (
            "coats",
            21.0,
            Range::Coats,
            "`coats` is 21, outside 0 to 20; give a value from 0 to 20",
        ),
        (
            "printer density",
            0.0,
            Range::Density,
            "`printer density` is 0 g/cm³, outside 0.1 to 25 g/cm³; give a value from 0.1 to 25 g/cm³",
        ),
    ] {
        let kind = FaultKind::OutOfRange {
            number,
            value,
            range,
        };
        always(Place::Bench, kind, &format!("bench: {sentence}"));
    }
}

#[test]
#[expect(clippy::too_many_lines, reason = "a list of sentences, one a kind")]
fn lengths_are_told_in_the_makers_unit() {
    both(
        Place::Slider,
        FaultKind::GuideTooLoose {
            play: 6.0,
            length: 10.0,
        },
        "slider: a play of 6.00 mm to either side lets a guide of 10.00 mm turn without end; make \
         `guide_play` less than 5.00 mm",
        "slider: a play of 0.236 in to either side lets a guide of 0.394 in turn without end; make \
         `guide_play` less than 0.196 in",
    );
    both(
        Place::Tab,
        FaultKind::HoldBeyondEngagement {
            required: 7.5,
            engagement: 6.35,
        },
        "tab: 7.50 mm of tab must stay held, but only 6.35 mm reach under the keeper; lower \
         `required_hold` below 6.35 mm or let the tab reach further",
        "tab: 0.295 in of tab must stay held, but only 0.250 in reach under the keeper; lower \
         `required_hold` below 0.250 in or let the tab reach further",
    );
    both(
        Place::Plate,
        FaultKind::PlateMovesFromHinge { most: 1.234 },
        "plate: between hinge and front edge the plate itself moves by up to 1.23 mm over the year; the \
         proof takes the keeper to stay with the plate's front edge; let the rabbet over the keeper, not \
         the hinge, set where the lid lies (a hinge with play), or turn the grain towards the hinge",
        "plate: between hinge and front edge the plate itself moves by up to 0.049 in over the year; the \
         proof takes the keeper to stay with the plate's front edge; let the rabbet over the keeper, not \
         the hinge, set where the lid lies (a hinge with play), or turn the grain towards the hinge",
    );
    both(
        Place::Slot(1, 0),
        FaultKind::SlotWiderThanDisc {
            width: 40.0,
            across: 36.0,
        },
        "dial 2, slot 1: a slot 40.00 mm wide in a disc 36.00 mm across; make the slot narrower than \
         36.00 mm or the disc larger",
        "dial 2, slot 1: a slot 1.575 in wide in a disc 1.417 in across; make the slot narrower than \
         1.417 in or the disc larger",
    );
    both(
        Place::Slot(0, 0),
        FaultKind::SlotTooNarrow {
            pin: 4.0,
            width: 3.5,
        },
        "dial 1, slot 1: the pin needs 4.00 mm, the slot is 3.50 mm wide; widen the slot by more than \
         0.50 mm",
        "dial 1, slot 1: the pin needs 0.157 in, the slot is 0.138 in wide; widen the slot by more than \
         0.020 in",
    );
    both(
        Place::Slot(0, 0),
        FaultKind::LeadInLongerThanWall {
            lead_in: 9.0,
            wall: 5.25,
        },
        "dial 1, slot 1: a lead-in of 9.00 mm on a wall of 5.25 mm; make the lead-in at most 5.25 mm or \
         the slot deeper",
        "dial 1, slot 1: a lead-in of 0.354 in on a wall of 0.207 in; make the lead-in at most 0.206 in or \
         the slot deeper",
    );
    both(
        Place::Slot(0, 2),
        FaultKind::SlotsMeet {
            other: 0,
            short: 1.5,
        },
        "dial 1, slot 3: runs into slot 1 of the same disc: 1.50 mm too little between them; move it to \
         another mark, or make the slots narrower or shallower",
        "dial 1, slot 3: runs into slot 1 of the same disc: 0.060 in too little between them; move it to \
         another mark, or make the slots narrower or shallower",
    );
    // a number that means nothing is told beside by a fault of its own
    let endless = FaultKind::SlotWiderThanDisc {
        width: f64::INFINITY,
        across: 36.0,
    };
    let told = in_units(Place::Slot(0, 0), endless, Units::Inch);
    assert!(told.contains("a slot inf in wide"), "{told}");
}

#[test]
fn woods_are_told_with_what_may_have_been_meant() {
    let wood = || "elm".to_owned();
    let (radial, tangential) = (WoodSize::Radial, WoodSize::Tangential);
    let too_large = |coefficient, value, meant| FaultKind::CoefficientTooLarge {
        wood: wood(),
        coefficient,
        value,
        meant,
    };
    always(
        Place::Design,
        FaultKind::CoefficientNotANumber {
            wood: wood(),
            coefficient: radial,
        },
        "design: `radial` of \"elm\" is not a number; give a fraction from 0 to 0.01",
    );
    always(
        Place::Design,
        FaultKind::CoefficientNegative {
            wood: wood(),
            coefficient: radial,
            value: -0.1,
        },
        "design: `radial` of \"elm\" is -0.1, but wood swells when it gets damper; give a fraction from \
         0 to 0.01",
    );
    let coefficient = 1.0 / (3000.0 / 2.02 - 20.0);
    always(
        Place::Design,
        too_large(tangential, 2.02, MeantAs::Shrinkage { coefficient }),
        "design: `tangential` of \"elm\" is 2.02, more than any wood moves: is that in per cent? A \
         fraction of its size for each per cent of moisture is meant, and woods lie between 0.0007 and \
         0.0045; if 2.02 % is what it shrinks from green to dry, give 0.00068; as a fraction 0.0202 would \
         still be more than any wood moves",
    );
    for (value, meant, ending) in [
        (
            0.18,
            MeantAs::PerCent(0.0018),
            "; as a fraction it is 0.00180",
        ),
        (1e300, MeantAs::Unknown, "; give a fraction from 0 to 0.01"),
    ] {
        let kind = too_large(radial, value, meant);
        let told = in_units(Place::Design, kind, Units::Inch);
        assert!(told.ends_with(ending), "{told}");
    }
    always(
        Place::Design,
        FaultKind::OwnWoodTwice {
            name: "Elm".to_owned(),
        },
        "design: two of the maker's own woods are called \"Elm\"; give one of them another name",
    );
    always(
        Place::Design,
        FaultKind::OwnWoodUnnamed { wood: 2 },
        "design: own wood 3 has no name; name it as the plate or the slider calls it",
    );
    let unknown = FaultKind::UnknownWood {
        name: "no such tree".to_owned(),
        own: vec![wood(), "yew".to_owned()],
    };
    let told = in_units(Place::Body, unknown, Units::Inch);
    let beginning = "body: no wood, or more than one, is called \"no such tree\" in the table of \
                     movement; name one of: elm, yew, ";
    assert!(told.starts_with(beginning), "{told}");
    assert!(wood_names().all(|name| told.contains(name)), "{told}");
}

#[test]
fn the_air_is_told_in_per_cent_and_degrees() {
    always(
        Place::Season,
        FaultKind::SeasonReversed {
            driest: 70.0,
            dampest: 35.0,
        },
        "season: the driest air (70 %) is damper than the dampest (35 %); exchange the two; the proof \
         covers both all the same",
    );
    let outside = |time, moisture, celsius, humidity| OutsideTable {
        time,
        climate: Climate { celsius, humidity },
        moisture,
    };
    always(
        Place::Season,
        FaultKind::MoistureOutsideTable {
            times: vec![
                outside(SeasonTime::Driest, 5.37, 21.0, 25.0),
                outside(SeasonTime::Dampest, 17.81, 24.0, 85.0),
            ],
        },
        "season: wood comes to a moisture of 5.4 % at the driest (25 % humidity, 21 °C) and of 17.8 % at \
         the dampest (85 % humidity, 24 °C); the table of movement is made for 6 to 14 %; outside it the \
         handbook's second formula is used; leave a little more room",
    );
    let built = FaultKind::MoistureOutsideTable {
        times: vec![outside(SeasonTime::Built, 3.0, 20.0, 10.0)],
    };
    let told = in_units(Place::Season, built, Units::Inch);
    assert!(told.contains("3.0 % when built (10 % humidity"), "{told}");
}

#[test]
fn counts_are_told_with_what_they_may_be() {
    let numbered = [
        (
            Place::Design,
            FaultKind::NumberOfDials { dials: 0 },
            "design: the design has 0 dials; a latch has 1 to 12; add a dial",
        ),
        (
            Place::Design,
            FaultKind::NumberOfDials { dials: 14 },
            "design: the design has 14 dials; a latch has 1 to 12; leave out 2; only the first 12 are \
             looked at",
        ),
        (
            Place::Dial(0),
            FaultKind::NumberOfPositions { positions: 1 },
            "dial 1: 1 positions; a dial has 2 to 360; give 2 to 360 positions",
        ),
        (
            Place::Dial(0),
            FaultKind::KeySides { sides: 2 },
            "dial 1: a key post with 2 sides; a post has 3 to 64; give the post 3 or 4 sides",
        ),
        (
            Place::Dial(2),
            FaultKind::NumberOfSlots { slots: 70 },
            "dial 3: 70 slots in one disc; at most 64 are looked at; leave out 6",
        ),
        (
            Place::Bench,
            FaultKind::FractionUnknown { fraction: 12 },
            "bench: rules are not divided into 12 parts of an inch; give 8, 16, 32 or 64",
        ),
    ];
    for (place, kind, sentence) in numbered {
        always(place, kind, sentence);
    }
}

#[test]
fn marks_and_labels_are_told_with_what_they_may_be() {
    let positions = 8;
    let told = [
        (
            Place::Dial(0),
            FaultKind::NumberOfLabels {
                labels: 3,
                positions,
            },
            "dial 1: 3 labels for 8 positions; give one label a position; a mark without one shows its \
             number",
        ),
        (
            Place::Dial(0),
            FaultKind::LabelTwice {
                label: "oak".to_owned(),
            },
            "dial 1: the label \"oak\" stands at more than one mark; give every mark a label of its own",
        ),
        (
            Place::Dial(0),
            FaultKind::NoTrueSlot,
            "dial 1: no slot at mark 0: nothing lets the pin in at the combination; give the disc a slot \
             with `mark: 0`",
        ),
        (
            Place::Slot(0, 0),
            FaultKind::SlotMarkOutOfRange {
                mark: -1,
                positions,
            },
            "dial 1, slot 1: slot at mark -1; marks run from 0 to 7; give a mark from 0 to 7",
        ),
        (
            Place::Combination,
            FaultKind::CombinationLength { marks: 2, dials: 3 },
            "combination: 2 marks for 3 dials; give one mark a dial",
        ),
        (
            Place::Dial(1),
            FaultKind::CombinationMarkOutOfRange { mark: 9, positions },
            "dial 2: the combination stands at mark 9; marks run from 0 to 7; give a mark from 0 to 7",
        ),
    ];
    for (place, kind, sentence) in told {
        always(place, kind, sentence);
    }
}
