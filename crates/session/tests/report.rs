//! A proof as a sentence, a terminal page and JSON, from proofs made by hand.

use std::ops::ControlFlow;

use latchwright_model::change::{DialSize, LatchSize};
use latchwright_model::{Change, Fault, FaultKind, Place, Size, Step, Unit};
use latchwright_model::{Design, Units};
use latchwright_proof::CheckKind;
use latchwright_proof::check::advice::{Estimate, FromTo};
use latchwright_proof::check::{About, Advice, Contributor};
use latchwright_proof::states::{LockStates, Slides, State, StateRow, Sure};
use latchwright_proof::{
    Check, CheckVerdict, Counts, DialProof, HeldTogether, MarkProof, Proof, Reach, StopsAt,
    SureStop, Verdict,
};
use latchwright_search::Remedy;
use latchwright_search::propose::{Outcome, Wishes, propose};
use latchwright_session::format::read;
use latchwright_session::report::{
    FileNotes, Sought, nothing_json, nothing_sentence, nothing_text, proof_json, proof_text,
    remedy_sentence, spare_mm, verdict_sentence,
};
use serde_json::json;

fn mark(verdict: Verdict, margin: f64) -> MarkProof {
    let holds = verdict == Verdict::Holds;
    MarkProof {
        verdict,
        reach: Reach {
            travel: if holds { 2.0 } else { 8.0 },
            stops_at: if holds { StopsAt::Rim } else { StopsAt::Free },
            contact: None,
        },
        stop: holds.then_some(SureStop::Rim),
        creep: holds.then_some(2.971),
        hold_margin: holds.then_some(margin),
        margin,
    }
}

fn dial(digit: u32, margin: f64) -> DialProof {
    let one = |at| {
        mark(
            if at == digit {
                Verdict::Passes
            } else {
                Verdict::Holds
            },
            margin,
        )
    };
    DialProof {
        digit,
        marks: (0..8).map(one).collect(),
        sure_window_deg: 6.4,
        possible_window_deg: 26.0,
    }
}

fn states() -> LockStates {
    let row = |state, lid_lifts, slider, dials_turn| StateRow {
        state,
        lid_lifts,
        slider,
        dials_turn,
        as_meant: true,
    };
    LockStates {
        rows: [
            row(State::Free, Sure::Yes, Slides::Forward, Sure::No),
            row(State::Shut, Sure::No, Slides::Whole, Sure::Yes),
            row(State::Locked, Sure::No, Slides::ToTheStop, Sure::Yes),
            row(State::OnTheWay, Sure::Perhaps, Slides::Whole, Sure::No),
        ],
    }
}

fn check(kind: CheckKind, margin: f64, verdict: CheckVerdict) -> Check {
    Check {
        kind,
        about: About::Dial(0),
        value: margin,
        limit: 0.0,
        margin,
        unit: Unit::Millimetre,
        verdict,
        decided_by: vec![
            (Contributor::GuidePlay, 0.458),
            (Contributor::PinPlace, 0.25),
        ],
        advice: if verdict == CheckVerdict::Passes {
            Advice::Slack
        } else {
            Advice::Change(Estimate::WidenGap(FromTo { from: 1.6, to: 2.4 }))
        },
        worst: None,
    }
}

fn proven() -> Proof {
    Proof {
        faults: Vec::new(),
        dials: vec![dial(3, 0.504), dial(6, 0.963), dial(1, 0.504)],
        together: HeldTogether::default(),
        settings: Counts {
            total: 512,
            opens: 1,
            locks: 511,
            unsure: 0,
        },
        checks: vec![check(CheckKind::AtRest, 0.592, CheckVerdict::Passes)],
        states: states(),
        proven: true,
    }
}

#[test]
fn a_proven_latch_says_so_with_what_is_to_spare() {
    let (design, proof) = (Design::default(), proven());
    assert_eq!(spare_mm(&proof), Some(0.504));
    assert_eq!(
        verdict_sentence(&design, &proof),
        "One setting of 512 opens; every other one locks, with at least 0.50 mm of tab to spare"
    );
    let inches = Design {
        units: Units::Inch,
        ..design
    };
    assert_eq!(
        verdict_sentence(&inches, &proof),
        "One setting of 512 opens; every other one locks, with at least 0.019 in of tab to spare"
    );
}

#[test]
fn a_latch_that_is_not_proven_says_why() {
    let design = Design::default();
    let counted = |opens, unsure| Proof {
        settings: Counts {
            total: 20_736,
            opens,
            locks: 20_736 - opens - unsure,
            unsure,
        },
        proven: false,
        ..proven()
    };
    for (opens, unsure, sentence) in [
        (2, 0, "2 settings of 20\u{202F}736 open, where one should"),
        (0, 0, "No setting of 20\u{202F}736 is sure to open"),
        (
            1,
            1,
            "One setting of 20\u{202F}736 opens; \
             one more can neither be promised to lock nor to open",
        ),
        (
            0,
            12,
            "No setting of 20\u{202F}736 is sure to open; \
             12 more can neither be promised to lock nor to open",
        ),
    ] {
        assert_eq!(verdict_sentence(&design, &counted(opens, unsure)), sentence);
    }
    let mut proof = counted(1, 0);
    proof.checks = vec![check(CheckKind::AtRest, -0.11, CheckVerdict::Fails)];
    assert_eq!(
        verdict_sentence(&design, &proof),
        "One setting of 20\u{202F}736 opens and every other one locks, \
         but one check does not pass: Dial 1 turns free of its pin at rest"
    );
    proof.faults = vec![fault()];
    assert_eq!(
        verdict_sentence(&design, &proof),
        "Nothing can be promised: dial 2, slot 1: a slot 40.00 mm wide in a disc 36.00 mm across"
    );
    let inches = Design {
        units: Units::Inch,
        ..design
    };
    assert_eq!(
        verdict_sentence(&inches, &proof),
        "Nothing can be promised: dial 2, slot 1: a slot 1.575 in wide in a disc 1.417 in across"
    );
}

fn fault() -> Fault {
    Fault {
        place: Place::Slot(1, 0),
        kind: FaultKind::SlotWiderThanDisc {
            width: 40.0,
            across: 36.0,
        },
    }
}

#[test]
fn the_page_shows_every_dial_state_check_and_notice() {
    let loaded = read(include_bytes!("fixtures/three-dials.ron")).unwrap();
    // the file is older than some fields, whose notices are told alike
    let told = ["slider.shank", "keeper", "card"];
    let mut notices = loaded.notices;
    notices.retain(|notice| told.contains(&notice.field.as_str()));
    let notes = FileNotes {
        notices: &notices,
        unknown: &[],
    };
    let mut proof = proven();
    proof
        .checks
        .insert(0, check(CheckKind::AtRest, -0.11, CheckVerdict::Fails));
    let page = proof_text(&loaded.design, &proof, &[], &notes);
    let expected = "\
Tea box for the window seat

PROVEN. One setting of 512 opens; every other one locks, with at least 0.50 mm of tab to spare.
Settings: 512 in all; opens 1, locks 511, unsure 0.

Marks: + passes, # holds, ? unsure; [ ] the combination
  Dial 1
    1#  2#  3# [4+] 5#  6#  7#  8#
    holds with at least 0.50 mm of tab to spare; passes within ±6.4° of its mark, holds beyond ±26.0°
  Dial 2
    1#  2#  3#  4#  5#  6# [7+] 8#
    holds with at least 0.96 mm of tab to spare; passes within ±6.4° of its mark, holds beyond ±26.0°
  Dial 3
    1# [2+] 3#  4#  5#  6#  7#  8#
    holds with at least 0.50 mm of tab to spare; passes within ±6.4° of its mark, holds beyond ±26.0°

States       lid lifts   slider moves   dials turn
  free       yes         forward        no
  shut       no          all the way    yes
  locked     no          to the stop    yes
  on the way perhaps     all the way    no

Season
  Wood stands at 5.4 % moisture when driest and 13.0 % when dampest; it was 8.5 % when built.
  The guide keeps at least 0.25 mm of play a side; a dial drifts from its pin by up to 0.37 mm.

Checks, worst first
  FAILS   Dial 1 turns free of its pin at rest: −0.11 mm where 0.00 mm is needed, short by 0.11 mm
          decided by play in the guide 0.45 mm, place of the pin 0.25 mm
          widen the gap of dial 1 from 1.60 to about 2.40 mm
  passes  Dial 1 turns free of its pin at rest: 0.59 mm where 0.00 mm is needed, 0.59 mm to spare
          decided by play in the guide 0.45 mm, place of the pin 0.25 mm

Notices
  slider: `shank` is not given: taken as 8.0
  `keeper` is not given: taken as (edge: 14.0, width: 56.0, depth: 14.0, thickness: 6.0, make: Wood)
";
    assert!(page.starts_with(expected), "{page}");
    assert_eq!(page.lines().count(), expected.lines().count() + 1, "{page}");
}

#[test]
fn the_json_has_the_agreed_fields() {
    let mut proof = proven();
    proof.dials.truncate(1);
    proof.dials[0].marks.truncate(4);
    let mut value = proof_json(&Design::default(), &proof, &[], &FileNotes::default());
    assert!(value["season"].take().is_object(), "its own test below");
    let holds = |mark: u32| {
        json!({"mark": mark, "verdict": "holds", "stops_at": "rim", "reach_mm": 2.0,
               "creep_mm": 2.971, "hold_margin_mm": 0.504})
    };
    let state = |state: &str, lid: &str, slider: &str, dials: &str| {
        json!({"state": state, "lid_lifts": lid, "slider": slider, "dials_turn": dials,
               "as_meant": true})
    };
    let expected = json!({
        "format": 1,
        "title": "Untitled box",
        "proven": true,
        "settings": {"total": 512, "opens": 1, "locks": 511, "unsure": 0},
        "together": [],
        "dials": [{
            "dial": 1,
            "digit": 3,
            "marks": [holds(0), holds(1), holds(2), {
                "mark": 3, "verdict": "passes", "stops_at": "free", "reach_mm": 8.0,
                "creep_mm": null, "hold_margin_mm": null,
            }],
            "sure_window_deg": 6.4,
            "possible_window_deg": 26.0,
        }],
        "checks": [{
            "check": "at-rest", "dial": 1, "value": 0.592, "limit": 0.0, "margin": 0.592,
            "unit": "mm", "verdict": "passes",
            "decided_by": [["guide_play", 0.458], ["pin_place", 0.25]],
            "remedy": "nothing to do: 0.59 mm to spare", "change": null, "worst_box": null,
        }],
        "states": [
            state("free", "yes", "forward", "no"),
            state("shut", "no", "whole", "yes"),
            state("locked", "no", "to-the-stop", "yes"),
            state("on-the-way", "perhaps", "whole", "no"),
        ],
        "season": null,
        "notices": [],
    });
    assert_eq!(value, expected);
}

fn longer_engagement(proven: bool) -> Remedy {
    let longer = Step::Resize {
        size: Size::Latch(LatchSize::Engagement),
        from: 6.0,
        to: 6.85,
    };
    let also = check(CheckKind::Free, -0.122, CheckVerdict::Fails);
    Remedy {
        change: Change {
            steps: vec![longer],
        },
        margin: 0.047,
        also: if proven { Vec::new() } else { vec![also] },
        proven,
    }
}

#[test]
fn a_remedy_is_told_with_what_it_gives_and_what_it_costs() {
    let failing = check(CheckKind::AtRest, -0.8, CheckVerdict::Fails);
    let told = |design: &Design, proven| {
        let remedy = longer_engagement(proven);
        remedy_sentence(design, &failing, Sought::Found(&remedy))
    };
    let design = Design::default();
    assert_eq!(
        told(&design, true),
        "lengthen the engagement from 6.00 mm to 6.85 mm: then 0.04 mm are to spare and the latch \
         is proven"
    );
    assert_eq!(
        told(&design, false),
        "lengthen the engagement from 6.00 mm to 6.85 mm: then 0.04 mm are to spare, but other \
         checks fail that pass now: Tab clears the keeper when the slider is back, short by 0.13 mm"
    );
    let inches = Design {
        units: Units::Inch,
        ..design.clone()
    };
    assert_eq!(
        told(&inches, true),
        "lengthen the engagement from 0.236 in to 0.269 in: then 0.001 in are to spare and the \
         latch is proven"
    );
    let sentence = |sought| remedy_sentence(&design, &failing, sought);
    let narrow = Remedy {
        margin: 0.004,
        ..longer_engagement(true)
    };
    assert_eq!(
        sentence(Sought::Found(&narrow)),
        "lengthen the engagement from 6.00 mm to 6.85 mm: then it just passes and the latch is proven"
    );
    assert_eq!(
        sentence(Sought::NotYet),
        "widen the gap of dial 1 from 1.60 to about 2.40 mm"
    );
    assert_eq!(
        sentence(Sought::InVain),
        "no change of a few sizes was found that mends it; widen the gap of dial 1 \
         from 1.60 to about 2.40 mm"
    );
}

#[test]
fn both_reports_tell_the_remedy_that_was_found() {
    let design = Design::default();
    let failing = check(CheckKind::AtRest, -0.8, CheckVerdict::Fails);
    let passing = check(CheckKind::Free, 0.3, CheckVerdict::Passes);
    let mut proof = proven();
    proof.checks = vec![failing, passing];
    let remedies = [Some(longer_engagement(false)), None];
    let value = proof_json(&design, &proof, &remedies, &FileNotes::default());
    assert_eq!(
        value["checks"][0]["change"],
        json!({
            "steps": [{
                "deed": "lengthen the engagement", "size": "the engagement",
                "from": 6.0, "to": 6.85,
            }],
            "margin": 0.047,
            "fails_after": [{"check": "free", "dial": 1, "margin": -0.122}],
            "proven_after": false,
        })
    );
    assert_eq!(value["checks"][1]["change"], json!(null));
    let page = proof_text(&design, &proof, &remedies, &FileNotes::default());
    let sentence = "\n          lengthen the engagement from 6.00 mm to 6.85 mm: then 0.04 mm are";
    assert!(page.contains(sentence), "{page}");
}

/// The year of the usual box: an oak plate and slider that move as one, driest at both ends.
#[test]
fn the_json_has_the_whole_curve_of_the_year() {
    let of = |design: &Design| proof_json(design, &proven(), &[], &FileNotes::default());
    let value = of(&Design::default());
    let season = &value["season"];
    let points = season["points"].as_array().unwrap();
    assert_eq!(points.len(), 25);
    let (first, damp) = (&points[0], &points[12]);
    assert_eq!((&first["at"], &damp["at"]), (&json!(0.0), &json!(0.5)));
    assert_eq!(
        (&first["humidity"], &damp["humidity"]),
        (&json!(25.0), &json!(70.0))
    );
    assert_eq!(
        (&first["celsius"], &damp["celsius"]),
        (&json!(21.0), &json!(24.0))
    );
    assert_eq!(
        (&first["second_formula"], &damp["second_formula"]),
        (&json!(true), &json!(false))
    );
    // a plate of oak along its grain against plywood
    let play = damp["guide_play_mm"].as_f64().unwrap();
    assert!((0.09..0.1).contains(&play), "{play}");
    assert!(
        damp["moisture"]
            .as_f64()
            .is_some_and(|moisture| (12.9..13.1).contains(&moisture))
    );
    let held = damp["tab_held_mm"].as_f64().unwrap();
    assert!((4.0..8.5).contains(&held), "{held}");
    assert_eq!(damp["dials"].as_array().unwrap().len(), 3);
    let aside = damp["dials"][0]["aside_mm"].as_f64().unwrap();
    assert!((0.0..0.05).contains(&aside.abs()), "{aside}");
    assert!(
        season["built_at"]
            .as_f64()
            .is_some_and(|at| (0.2..0.3).contains(&at))
    );
    let unknown = Design {
        plate: latchwright_model::Plate {
            wood: "no such tree".to_owned(),
            ..Design::default().plate
        },
        ..Design::default()
    };
    assert!(of(&unknown)["season"].is_null());
}

#[test]
fn counts_that_json_readers_would_round_are_strings() {
    let mut proof = proven();
    let most = 1_u128 << 53;
    let total = 360_u128.pow(12);
    proof.settings = Counts {
        total,
        opens: 1,
        locks: most,
        unsure: most + 1,
    };
    let value = proof_json(&Design::default(), &proof, &[], &FileNotes::default());
    assert_eq!(
        value["settings"]["total"],
        json!("4738381338321616896000000000000")
    );
    assert_eq!(value["settings"]["locks"], json!(9_007_199_254_740_992_u64));
    assert_eq!(value["settings"]["unsure"], json!("9007199254740993"));
}

#[test]
fn nothing_is_proven_while_a_field_is_unknown() {
    let loaded = read(b"(format: 1, titel: \"x\")").unwrap();
    let notes = FileNotes {
        notices: &[],
        unknown: &loaded.unknown,
    };
    let value = proof_json(&loaded.design, &proven(), &[], &notes);
    assert_eq!(value["proven"], json!(false));
    assert_eq!(
        value["notices"],
        json!([
            "error: line 1, column 13: `titel` is not a field of a design; did you mean `title`?"
        ])
    );
    let page = proof_text(&loaded.design, &proven(), &[], &notes);
    assert!(page.contains("\nNOT PROVEN. "), "{page}");
    assert!(
        page.contains("  UNKNOWN line 1, column 13: `titel`"),
        "{page}"
    );
}

#[test]
fn faults_stand_in_both_reports() {
    let proof = Proof {
        faults: vec![fault()],
        proven: false,
        ..proven()
    };
    let sentence = "dial 2, slot 1: a slot 40.00 mm wide in a disc 36.00 mm across; make the slot \
                    narrower than 36.00 mm or the disc larger";
    let in_inches = "dial 2, slot 1: a slot 1.575 in wide in a disc 1.417 in across; make the slot \
                     narrower than 1.417 in or the disc larger";
    for (units, told) in [(Units::Millimetre, sentence), (Units::Inch, in_inches)] {
        let design = Design {
            units,
            ..Design::default()
        };
        // programs are told millimetres whatever the maker thinks in
        let value = proof_json(&design, &proof, &[], &FileNotes::default());
        assert_eq!(value["notices"], json!([format!("error: {sentence}")]));
        let page = proof_text(&design, &proof, &[], &FileNotes::default());
        assert!(page.contains(&format!("  FAULT {told}")), "{page}");
    }
}

#[test]
fn a_dial_of_many_words_stays_within_the_page() {
    let mut design = Design::default();
    design.dials[0].labels =
        latchwright_model::Labels::Words(vec!["a long\nword of".to_owned(); 8]);
    let page = proof_text(&design, &proven(), &[], &FileNotes::default());
    let marks = page
        .lines()
        .filter(|line| line.contains('#') && !line.starts_with("Marks"));
    assert!(marks.clone().count() > 3);
    assert!(
        marks.clone().all(|line| line.chars().count() <= 80),
        "{page}"
    );
}

#[test]
fn wishes_that_are_no_latch_are_refused_in_the_makers_unit() {
    for (units, told) in [
        (
            Units::Millimetre,
            "a lid 20 mm wide leaves nothing inside: the sides alone take 24 mm; give a larger one; \
             dial 1: `knob height` is -12.7 mm, but a size must be above 0; give a value from 0.001 to \
             5000 mm; the gap of dial 8 cannot be pinned to 2",
        ),
        (
            Units::Inch,
            "a lid 0.7874 in wide leaves nothing inside: the sides alone take 0.9449 in; give a larger \
             one; dial 1: `knob height` is -0.5 in, but a size must be above 0; give a value from 0.00004 \
             to 196.85039 in; the gap of dial 8 cannot be pinned to 2",
        ),
    ] {
        let mut base = Design {
            units,
            ..Design::default()
        };
        base.dials.truncate(1);
        base.dials[0].knob.height = -12.7;
        let mut wishes = Wishes::of(base).with_lid(20.0, 140.0);
        wishes.pinned = vec![(Size::Dial(7, DialSize::Gap), 2.0)];
        let Outcome::Nothing(nothing) = propose(&wishes, &mut |_| ControlFlow::Continue(())) else {
            panic!("something was found");
        };
        assert_eq!(nothing_sentence(&nothing), told);
        assert_eq!(nothing_text(&nothing), format!("A{}.\n", &told[1..]));
        assert_eq!(nothing_json(&nothing)["why"], json!(told));
    }
}
