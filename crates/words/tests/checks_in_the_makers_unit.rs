//! Every check, contributor and advice has its words, in the maker's unit: an inch maker never reads a
//! millimetre.

use latchwright_model::{Climate, Design, Units};
use latchwright_proof::check::advice::{
    Estimate, FromTo, Improvement, LoosePart, Nothing, OtherMarks, RoomInside, Warning,
};
use latchwright_proof::check::{About, Advice, CheckKind, Contributor};
use latchwright_proof::{Check, CheckVerdict, prove};
use latchwright_words::{advice, check_title, contributor};

fn check(kind: CheckKind, about: About, advice: Advice) -> Check {
    Check {
        kind,
        about,
        value: 1.25,
        limit: 0.5,
        margin: 0.75,
        unit: kind.unit(),
        verdict: CheckVerdict::Passes,
        decided_by: Vec::new(),
        advice,
        worst: None,
    }
}

fn inches() -> Design {
    Design {
        units: Units::Inch,
        ..Design::default()
    }
}

fn size() -> FromTo {
    FromTo {
        from: 8.0,
        to: 8.125,
    }
}

/// Every estimate there is; the match keeps the list whole.
#[expect(
    clippy::too_many_lines,
    reason = "every estimate twice: in the list, and in the match that keeps it whole"
)]
fn estimates() -> Vec<Estimate> {
    let others = || {
        vec![OtherMarks {
            dial: 1,
            own: 7,
            marks: vec![2, 3],
            every: false,
        }]
    };
    let all = vec![
        Estimate::WidenGap(size()),
        Estimate::DeepenSlot(size()),
        Estimate::WidenSlot(size()),
        Estimate::WidenSlotOrRead {
            slot: size(),
            reading: 2.5,
        },
        Estimate::LengthenTravel(size()),
        Estimate::LengthenEngagement(size()),
        Estimate::LengthenEngagementToAtLeast(size()),
        Estimate::WidenGuidePlay(size()),
        Estimate::ApartOrSmallerDiscs(0.35),
        Estimate::ApartOrSmallerKnobs(0.35),
        Estimate::Apart(0.35),
        Estimate::ApartOrSmallerDisc(0.35),
        Estimate::ApartAlongFront(0.35),
        Estimate::InwardsOrLargerPlate(0.35),
        Estimate::FingerKnobApart(0.35),
        Estimate::AwayFromFingerKnob(0.35),
        Estimate::AwayFromFingerKnobsWay(0.35),
        Estimate::LargerDiscOrShallowerSlot(0.35),
        Estimate::DialsToHingeOrLessTravel(0.35),
        Estimate::FingerKnobOverWood(0.35),
        Estimate::GuideToHinge(0.35),
        Estimate::ShortenGuideOrDialsToHinge {
            guide: size(),
            dials: 0.35,
        },
        Estimate::BeginGuideFurtherBack(0.35),
        Estimate::OtherPositions {
            positions: 10,
            fewer: Some(8),
            more: 12,
        },
        Estimate::TighterKey,
        Estimate::LengthenPin(size()),
        Estimate::OneHeight {
            disc: 0.5,
            slider: 0.75,
        },
        Estimate::LowerDisc(size()),
        Estimate::LowerSlider(size()),
        Estimate::MoreRoomBelow(size()),
        Estimate::DeepenRabbet(size()),
        Estimate::ThickerPlate(size()),
        Estimate::LowerFinger(size()),
        Estimate::ShorterFreePin(size()),
        Estimate::ThickerPin(size()),
        Estimate::ThickerSlider(size()),
        Estimate::LongerGuide {
            guide: size(),
            aside: size(),
        },
        Estimate::GapBelowTravel {
            gap: 8.5,
            travel: 8.0,
        },
        Estimate::NarrowSlotsOrFewerPositions,
        Estimate::NarrowSlotForTwins(others()),
        Estimate::LeaveOutSecondSlot(others()),
        Estimate::NarrowSlotForNeighbours(others()),
        Estimate::DecideMark { dial: 0, mark: 2 },
        Estimate::HalveOneThing {
            what: Improvement::PinPlaces,
            now: 0.25,
            gain: 0.12,
        },
    ];
    for estimate in &all {
        // a new estimate does not compile here until it is in the list above
        match estimate {
            Estimate::WidenGap(_)
            | Estimate::DeepenSlot(_)
            | Estimate::WidenSlot(_)
            | Estimate::WidenSlotOrRead { .. }
            | Estimate::LengthenTravel(_)
            | Estimate::LengthenEngagement(_)
            | Estimate::LengthenEngagementToAtLeast(_)
            | Estimate::WidenGuidePlay(_)
            | Estimate::ApartOrSmallerDiscs(_)
            | Estimate::ApartOrSmallerKnobs(_)
            | Estimate::Apart(_)
            | Estimate::ApartOrSmallerDisc(_)
            | Estimate::ApartAlongFront(_)
            | Estimate::InwardsOrLargerPlate(_)
            | Estimate::FingerKnobApart(_)
            | Estimate::AwayFromFingerKnob(_)
            | Estimate::AwayFromFingerKnobsWay(_)
            | Estimate::LargerDiscOrShallowerSlot(_)
            | Estimate::DialsToHingeOrLessTravel(_)
            | Estimate::FingerKnobOverWood(_)
            | Estimate::GuideToHinge(_)
            | Estimate::ShortenGuideOrDialsToHinge { .. }
            | Estimate::BeginGuideFurtherBack(_)
            | Estimate::OtherPositions { .. }
            | Estimate::TighterKey
            | Estimate::LengthenPin(_)
            | Estimate::OneHeight { .. }
            | Estimate::LowerDisc(_)
            | Estimate::LowerSlider(_)
            | Estimate::MoreRoomBelow(_)
            | Estimate::DeepenRabbet(_)
            | Estimate::ThickerPlate(_)
            | Estimate::LowerFinger(_)
            | Estimate::ShorterFreePin(_)
            | Estimate::ThickerPin(_)
            | Estimate::ThickerSlider(_)
            | Estimate::LongerGuide { .. }
            | Estimate::GapBelowTravel { .. }
            | Estimate::NarrowSlotsOrFewerPositions
            | Estimate::NarrowSlotForTwins(_)
            | Estimate::LeaveOutSecondSlot(_)
            | Estimate::NarrowSlotForNeighbours(_)
            | Estimate::DecideMark { .. }
            | Estimate::HalveOneThing { .. } => {}
        }
    }
    all
}

fn all_advice() -> Vec<Advice> {
    let room = RoomInside {
        litres: 45.0,
        least: 250.0,
    };
    let parts = vec![LoosePart::Knob(0), LoosePart::Disc(1), LoosePart::Pin(2)];
    let nothing = [
        Nothing::Seated {
            positions: 8,
            sides: 4,
        },
        Nothing::HoldsAt { marks: 7, of: 8 },
        Nothing::OneOpens,
        Nothing::NoneUnsure,
        Nothing::NoNeighbourOpens,
        Nothing::MovesOn { by: 0.3 },
        Nothing::StopsAlike,
        Nothing::TooSmallForAChild(room),
        Nothing::ForGrownPeople(room),
        Nothing::NoSmallParts,
        Nothing::SmallPartsAtThisAge(parts.clone()),
    ];
    let warnings = [
        Warning::FirstLetIn,
        Warning::NoneOpens,
        Warning::SeeFaults,
        Warning::FirstDecideSettings,
        Warning::ChangeASize,
        Warning::ChildCouldBeShutIn(room),
        Warning::CanBeSwallowed(parts),
    ];
    let mut all = vec![Advice::Slack];
    all.extend(nothing.map(Advice::Nothing));
    all.extend(estimates().into_iter().map(Advice::Change));
    all.extend(warnings.map(Advice::Warning));
    all
}

#[test]
fn an_inch_maker_never_reads_a_millimetre_in_a_check_or_its_advice() {
    let mut design = inches();
    design.slider.guide_play = 0.0;
    let mut lengths = 0;
    for told in all_advice() {
        for kind in CheckKind::ALL {
            let mut check = check(*kind, About::Pair(0, 1), told.clone());
            check.value = -1.0;
            for text in [check_title(&check, &design), advice(&check, &design)] {
                assert!(!text.contains("mm"), "{kind:?}: {text}");
                lengths += usize::from(text.contains(" in"));
            }
        }
    }
    assert!(lengths > 1_000, "only {lengths} lengths were told");
}

#[test]
fn no_two_kinds_ask_the_same_and_no_two_contributors_share_a_name() {
    let design = Design::default();
    let mut titles: Vec<String> = CheckKind::ALL
        .iter()
        .map(|kind| check_title(&check(*kind, About::Pair(0, 1), Advice::Slack), &design))
        .collect();
    let kinds = titles.len();
    titles.sort();
    titles.dedup();
    assert_eq!(titles.len(), kinds);
    let mut names: Vec<&str> = Contributor::ALL
        .iter()
        .map(|what| contributor(*what))
        .collect();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), Contributor::ALL.len());
}

#[test]
fn what_to_do_is_told_with_figures_in_the_unit_of_the_design() {
    let told =
        |design: &Design, kind, about, what: Advice| advice(&check(kind, about, what), design);
    let (mm, inch) = (Design::default(), inches());
    let gap = || Advice::Change(Estimate::WidenGap(size()));
    assert_eq!(
        told(&mm, CheckKind::AtRest, About::Dial(1), gap()),
        "widen the gap of dial 2 from 8.00 to about 8.12 mm"
    );
    assert_eq!(
        told(&inch, CheckKind::AtRest, About::Dial(1), gap()),
        "widen the gap of dial 2 from 0.315 to about 0.320 in"
    );
    assert_eq!(
        told(&inch, CheckKind::PinStrength, About::Dial(0), Advice::Slack),
        "nothing to do: 0.8 MPa to spare"
    );
    let finger = Advice::Change(Estimate::LowerFinger(size()));
    assert_eq!(
        told(&mm, CheckKind::DiscToFinger, About::Dial(2), finger),
        "cut the finger of dial 3 lower, so that at least 8.12 mm of its pin stand free, not 8.00 mm, in a \
         slider that is thicker by as much"
    );
    let twin = vec![OtherMarks {
        dial: 1,
        own: 7,
        marks: vec![2],
        every: false,
    }];
    assert_eq!(
        told(
            &mm,
            CheckKind::TwinOpenings,
            About::Latch,
            Advice::Change(Estimate::LeaveOutSecondSlot(twin))
        ),
        "on dial 2, mark 3 opens as well as 8: leave out the second slot or make it blind"
    );
    let every = vec![OtherMarks {
        dial: 0,
        own: 1,
        marks: vec![2, 3, 0],
        every: true,
    }];
    assert_eq!(
        told(
            &mm,
            CheckKind::ToldApart,
            About::Latch,
            Advice::Change(Estimate::NarrowSlotForNeighbours(every))
        ),
        "on dial 1, every mark may open as well as 2: narrow the slot or take fewer positions"
    );
    let halve = || {
        Advice::Change(Estimate::HalveOneThing {
            what: Improvement::PinPlaces,
            now: 0.25,
            gain: 0.12,
        })
    };
    assert_eq!(
        told(&mm, CheckKind::Workmanship, About::Dial(0), halve()),
        "halving the places of the pins (± 0.25 mm) would add most to the least margin: 0.12 mm"
    );
    assert_eq!(
        told(&inch, CheckKind::Workmanship, About::Dial(0), halve()),
        "halving the places of the pins (± 0.010 in) would add most to the least margin: 0.005 in"
    );
}

#[test]
fn titles_that_tell_figures_take_them_from_the_design_and_its_proof() {
    let mut design = Design::default();
    let title = |design: &Design, kind: CheckKind| {
        let checks = prove(design).checks;
        let found = checks.iter().find(|check| check.kind == kind);
        check_title(found.expect("a check of this kind"), design)
    };
    let feel = title(&design, CheckKind::ByFeel);
    assert!(feel.contains("at most 24 tries open it, not 512"), "{feel}");
    assert!(feel.ends_with("it does not keep valuables"), "{feel}");
    assert_eq!(
        title(&design, CheckKind::ToldApart),
        "All 512 settings can be told apart"
    );
    assert_eq!(
        title(&design, CheckKind::Guide),
        "Slider keeps its play in the guide all year"
    );
    let bar = title(&design, CheckKind::StripsToBar);
    assert!(
        bar.starts_with("Guide strips, ") && bar.contains(" mm long"),
        "{bar}"
    );
    for dial in &mut design.dials {
        dial.disc.slots[0].width = 20.0;
        dial.positions = 16;
    }
    let apart = title(&design, CheckKind::ToldApart);
    assert!(apart.starts_with("Of 4096 settings "), "{apart}");
    // a slider of plain printed plastic in a guide that hardly gives: it closes somewhere in the year
    let mut close = Design::default();
    close.slider.material = latchwright_model::Material::Printed;
    close.plate.grain = latchwright_model::Grain::AlongY;
    close.slider.guide_play = 0.1;
    close.season.driest = Climate {
        celsius: 21.0,
        humidity: 25.0,
    };
    let guide = title(&close, CheckKind::Guide);
    assert!(
        guide.contains(": it closes at ") && guide.contains(" % humidity ("),
        "{guide}"
    );
}
