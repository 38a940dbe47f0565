//! Faults of the box: what cannot be built, or needs a second look, and what to do.

use latchwright_workshop::Axis;
use latchwright_workshop::inch::Rule;
use latchwright_workshop::joinery::{BoxSize, JoineryFault};

/// Place, message and remedy.
pub fn joinery_fault(fault: &JoineryFault, rule: Rule) -> String {
    format!(
        "{}: {}; {}",
        crate::place(fault.place()),
        joinery_message(fault, rule),
        joinery_remedy(fault, rule)
    )
}

/// What is wrong, with its figures.
#[expect(clippy::too_many_lines, reason = "one arm a fault, and no more")]
pub fn joinery_message(fault: &JoineryFault, rule: Rule) -> String {
    let (say, fine) = (|mm: f64| rule.say(mm), |mm: f64| rule.say_fine(mm));
    match fault {
        JoineryFault::NothingLeft { which, bare, film } => format!(
            "{} is {} once coats of {} a face are taken off: nothing is left to cut",
            box_size(*which),
            say(*bare),
            fine(*film)
        ),
        JoineryFault::GrooveTooDeep {
            groove, thickness, ..
        } => format!(
            "a groove of {} in sides of {} leaves less than a third of them",
            say(*groove),
            say(*thickness)
        ),
        JoineryFault::ThinUnderFloor { foot, .. } => format!(
            "only {} of wood stays under the floor's groove and breaks out easily",
            say(*foot)
        ),
        JoineryFault::PanelNegative {
            panel,
            width,
            depth,
        } => format!(
            "the {} comes out as {} × {}: there is none",
            panel.name(),
            say(*width),
            say(*depth)
        ),
        JoineryFault::PanelFallsOut {
            panel,
            holds,
            wanted,
            ..
        } => format!(
            "at its driest the {} stands only {} in its groove, {} are wanted",
            panel.name(),
            say(*holds),
            say(*wanted)
        ),
        JoineryFault::PanelWoodUnknown { panel } => format!(
            "the {}'s wood is in no table, so one that moves more than any was taken",
            panel.name()
        ),
        JoineryFault::PlateJams {
            axis, gap, grows, ..
        } => format!(
            "the plate has {} on each side in its groove along {} and grows by {}: it would burst the \
             corners",
            say(*gap),
            axis.letter(),
            fine(*grows)
        ),
        JoineryFault::PlateTooSmall {
            axis,
            has,
            wants,
            short,
        } => format!(
            "the plate's {} is {}, the box outside is {}: {} short",
            extent(*axis),
            say(*has),
            say(*wants),
            say(*short)
        ),
        JoineryFault::PlateFarOut { axis, has, over } => format!(
            "the plate's {} is {}, {} more than the box outside",
            extent(*axis),
            say(*has),
            say(*over)
        ),
        JoineryFault::BandCutsGroove { height, .. } => format!(
            "a band of {} would be cut through the plate's groove",
            say(*height)
        ),
        JoineryFault::BandTooHigh { left, .. } => format!(
            "the band leaves {} of the box, less than floor and groove take",
            say(*left)
        ),
        JoineryFault::NoKerf => {
            "the saw's cut is nought, so nothing is reckoned for the lid's cut".to_owned()
        }
        JoineryFault::HingesDoNotFit {
            length,
            inset,
            outside,
            ..
        } => format!(
            "two hinges of {} set in by {} do not fit on a back of {}",
            say(*length),
            say(*inset),
            say(*outside)
        ),
        JoineryFault::HingeTooWide {
            leaf, thickness, ..
        } => format!(
            "a leaf of {} on an edge of {} leaves too little wood before it",
            say(*leaf),
            say(*thickness)
        ),
        JoineryFault::HingeTooThick { leaf, lid } => format!(
            "a leaf {} thick would be let in more than half through a lid of {}",
            say(*leaf),
            say(*lid)
        ),
        JoineryFault::KeeperStandsOut { out, .. } => {
            format!("the keeper stands out {} in front of the lid", say(*out))
        }
        JoineryFault::KeeperBesideBox => "the keeper reaches beyond the box at one end".to_owned(),
        JoineryFault::ThinBeforeNotch { left, needed } => format!(
            "only {} of the front stays before the notch for the tab, {} are wanted",
            say(*left),
            say(*needed)
        ),
        JoineryFault::KeeperHasNoSeat { beside, needed } => format!(
            "the keeper lies on only {} of wood at each end beside the notch, a screw needs {}",
            say(*beside),
            say(*needed)
        ),
        JoineryFault::DiscMeetsSide { short, .. } => {
            format!("its disc would run {} into a side of the box", say(*short))
        }
        JoineryFault::SliderMeetsSide { short } => {
            format!(
                "the slider would run {} into a side of the box",
                say(*short)
            )
        }
    }
}

/// What to do about it.
pub fn joinery_remedy(fault: &JoineryFault, rule: Rule) -> String {
    let say = |mm: f64| rule.say(mm);
    match fault {
        JoineryFault::NothingLeft { .. } => {
            "give it a size above nought and above its coats".to_owned()
        }
        JoineryFault::GrooveTooDeep { most, .. } => format!(
            "make the groove at most {} deep, or take thicker sides",
            say(*most)
        ),
        JoineryFault::ThinUnderFloor { least, .. } => format!(
            "raise the floor to at least {} above the lower edge",
            say(*least)
        ),
        JoineryFault::PanelNegative { .. } => {
            "make the room larger or the groove deeper".to_owned()
        }
        JoineryFault::PanelFallsOut { groove, .. } => format!(
            "cut the grooves {} deep, or take plywood or a wood that moves less",
            say(*groove)
        ),
        JoineryFault::PanelWoodUnknown { .. } => {
            "add its coefficients to your own woods".to_owned()
        }
        JoineryFault::PlateJams { axis, less, .. } => format!(
            "make the plate {} smaller along {}, or the groove deeper",
            say(*less),
            axis.letter()
        ),
        JoineryFault::PlateTooSmall {
            axis, wants, short, ..
        } => format!(
            "make the plate's {} at least {}, or the room {} smaller",
            extent(*axis),
            say(*wants),
            say(*short)
        ),
        JoineryFault::PlateFarOut { .. } => {
            "make sure that it is meant to stand out so far".to_owned()
        }
        JoineryFault::BandCutsGroove { least, .. } => {
            format!("make the band at least {} high", say(*least))
        }
        JoineryFault::BandTooHigh { most, .. } => {
            format!("make the band at most {} high", say(*most))
        }
        JoineryFault::NoKerf => "measure a cut of your saw and give its width".to_owned(),
        JoineryFault::HingesDoNotFit { most, .. } => {
            format!("take hinges of at most {}, or set them in less", say(*most))
        }
        JoineryFault::HingeTooWide { most, .. } => {
            format!("take hinges with leaves of at most {}", say(*most))
        }
        JoineryFault::HingeTooThick { .. } => "take thinner hinges".to_owned(),
        JoineryFault::KeeperStandsOut { depth, .. } => format!(
            "make it {} deep, or round it off as a lip for the fingers",
            say(*depth)
        ),
        JoineryFault::KeeperBesideBox => {
            "make the keeper narrower or move the tab towards the middle".to_owned()
        }
        JoineryFault::ThinBeforeNotch { .. } => {
            "set keeper and tab further back, or make the sides thicker".to_owned()
        }
        JoineryFault::KeeperHasNoSeat { .. } => {
            "make the keeper wider or the tab narrower".to_owned()
        }
        JoineryFault::DiscMeetsSide { short, .. } => format!(
            "move the dial {} towards the middle, or take a smaller disc",
            say(*short)
        ),
        JoineryFault::SliderMeetsSide { short } => format!(
            "set the outer dials {} further in, or make the room wider",
            say(*short)
        ),
    }
}

const fn box_size(which: BoxSize) -> &'static str {
    match which {
        BoxSize::SideThickness => "the sides' thickness",
        BoxSize::RoomWidth => "the room's width",
        BoxSize::RoomDepth => "the room's depth",
        BoxSize::RoomHeight => "the room's height",
        BoxSize::FloorThickness => "the floor's thickness",
        BoxSize::SideHeight => "the sides' height",
    }
}

/// What the plate's size along an axis is called.
const fn extent(axis: Axis) -> &'static str {
    match axis {
        Axis::X => "width",
        Axis::Y => "depth",
    }
}
