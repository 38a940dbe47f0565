//! A maker who thinks in inches never reads a millimetre in a fault, whatever is wrong.

use std::collections::BTreeSet;

use latchwright_model::change::Size;
use latchwright_model::validate::{MAX_DIALS, faults};
use latchwright_model::{Design, Fault, FaultKind, Labels, OwnWood, Slot, Units};
use latchwright_proof::prove;
use latchwright_session::format::read;
use latchwright_session::report::{FileNotes, proof_text, verdict_sentence};
use latchwright_words::{fault_message, fault_remedy, fault_sentence};

/// The name of a fault's kind and the list of all of them: a kind that is not listed here does not
/// compile, and one that is listed must be met.
macro_rules! kinds {
    ($($kind:ident),+ $(,)?) => {
        fn name(fault: &Fault) -> &'static str {
            match fault.kind {
                $(FaultKind::$kind { .. } => stringify!($kind),)+
            }
        }

        const ALL: &[&str] = &[$(stringify!($kind)),+];
    };
}

kinds![
    NotANumber,
    SizeNotPositive,
    OutOfRange,
    CoefficientNotANumber,
    CoefficientNegative,
    CoefficientTooLarge,
    OwnWoodTwice,
    OwnWoodUnnamed,
    UnknownWood,
    GuideTooLoose,
    HoldBeyondEngagement,
    FractionUnknown,
    SeasonReversed,
    MoistureOutsideTable,
    PlateMovesFromHinge,
    NumberOfDials,
    NumberOfPositions,
    KeySides,
    NumberOfLabels,
    LabelTwice,
    NumberOfSlots,
    NoTrueSlot,
    SlotMarkOutOfRange,
    SlotWiderThanDisc,
    SlotTooNarrow,
    LeadInLongerThanWall,
    SlotsMeet,
    CombinationLength,
    CombinationMarkOutOfRange,
];

fn demo() -> Design {
    let file = include_bytes!("../../../demo/spice-box-inch.latch.ron");
    let design = read(file).expect("a demo can be read").design;
    assert_eq!(design.units, Units::Inch);
    design
}

type Spoil = fn(&mut Design);

/// Woods with nothing right about them.
fn odd_woods(design: &mut Design) {
    let wood = |name: &str, radial, tangential| OwnWood {
        name: name.to_owned(),
        radial,
        tangential,
    };
    design.own_woods = vec![
        wood("elm", 0.18, 2.02),
        wood("Elm", f64::NAN, -0.1),
        wood(" ", 1e300, 0.003),
    ];
}

/// Slots that run into each other, at marks that are not there.
fn odd_slots(design: &mut Design) {
    let slots = &mut design.dials[0].disc.slots;
    let slot = slots[0].clone();
    let at = |mark| Slot {
        mark,
        ..slot.clone()
    };
    *slots = (-1..70).filter(|mark| *mark != 0).map(at).collect();
}

/// What is planted, so that every kind of fault is met.
const PLANTED: [Spoil; 20] = [
    |d| d.plate.width = f64::NAN,
    |d| d.tab.width = -12.7,
    |d| d.keeper.edge = 6_000.0,
    odd_woods,
    |d| "no such tree".clone_into(&mut d.plate.wood),
    |d| d.slider.guide_play = d.slider.guide_length,
    |d| d.tab.required_hold = d.tab.engagement + 3.0,
    |d| d.bench.fraction = 12,
    |d| {
        d.season.driest.humidity = 90.0;
        d.workmanship.keeper_place = 0.0;
    },
    |d| d.dials.clear(),
    |d| d.dials = vec![d.dials[0].clone(); MAX_DIALS + 1],
    |d| d.dials[1].positions = 1,
    |d| d.dials[1].key.sides = 2,
    |d| d.dials[2].labels = Labels::Words(vec!["oak".to_owned(); 2]),
    odd_slots,
    |d| d.dials[0].disc.slots[0].width = 3.0 * d.dials[0].disc.radius,
    |d| d.dials[0].disc.slots[0].width = d.dials[0].pin.diameter - 0.5,
    |d| d.dials[0].disc.slots[0].lead_in = d.dials[0].disc.slots[0].depth,
    |d| {
        d.combination.pop();
    },
    |d| d.combination[0] = 99,
];

/// What no maker types on purpose.
const NONSENSE: [f64; 5] = [0.0, -1.0, -1e-9, 5_000.1, 1e300];

/// The demo with each planted fault, and with every number of it in turn made nonsense.
fn broken() -> Vec<Design> {
    let spoilt = |spoil: &Spoil| {
        let mut design = demo();
        spoil(&mut design);
        design
    };
    let mut all: Vec<Design> = PLANTED.iter().map(spoilt).collect();
    let whole = demo();
    for size in Size::all(&whole) {
        all.extend(NONSENSE.iter().filter_map(|value| {
            let mut design = whole.clone();
            size.set(&mut design, *value).then_some(design)
        }));
    }
    all
}

/// Whether a sentence speaks of millimetres.
fn speaks_of_mm(said: &str) -> bool {
    said.split(|letter: char| !letter.is_alphanumeric())
        .any(|word| word == "mm")
}

#[test]
fn an_inch_maker_never_reads_a_millimetre_in_a_fault_of_any_kind() {
    let mut met = BTreeSet::new();
    let mut lengths = 0;
    for design in broken() {
        for fault in faults(&design) {
            for said in [
                fault_message(&fault, design.units),
                fault_remedy(&fault, design.units),
            ] {
                assert!(!speaks_of_mm(&said), "{fault:?}: {said}");
            }
            // the same told to a maker who thinks in millimetres, so that something could be found
            lengths += usize::from(speaks_of_mm(&fault_sentence(&fault, Units::Millimetre)));
            met.insert(name(&fault));
        }
    }
    let all: BTreeSet<&str> = ALL.iter().copied().collect();
    assert_eq!(met, all);
    assert!(lengths > 500, "{lengths}");
}

#[test]
fn report_and_verdict_of_a_broken_inch_design_tell_its_faults_in_inches() {
    for spoil in PLANTED {
        let mut design = demo();
        spoil(&mut design);
        let proof = prove(&design);
        assert!(!proof.faults.is_empty());
        let page = proof_text(&design, &proof, &[], &FileNotes::default());
        let (_, notices) = page.split_once("\nNotices").expect("faults are told");
        assert!(!speaks_of_mm(notices), "{notices}");
        let verdict = verdict_sentence(&design, &proof);
        assert!(!speaks_of_mm(&verdict), "{verdict}");
    }
}
