//! Sentences about the latch as it stands, for the eye and for a screen reader alike.

use latchwright_model::unit::MM_PER_INCH;
use latchwright_model::{Design, Units};
use latchwright_proof::{Stop, StopsAt};
use latchwright_session::units::show_length_unit;

use crate::view_state::ViewState;

/// What a pin touches, in the trade's words.
pub fn touched(stops_at: StopsAt) -> &'static str {
    match stops_at {
        StopsAt::Free => "nothing",
        StopsAt::Rim => "plain rim",
        StopsAt::Mouth => "mouth corner",
        StopsAt::Wall => "slot wall",
        StopsAt::Floor => "floor of a blind slot",
    }
}

/// A short length for a sentence: one decimal in mm, three in inches.
pub fn short_length(mm: f64, units: Units) -> String {
    match units {
        Units::Millimetre => format!("{mm:.1} mm"),
        Units::Inch => format!("{:.3} in", mm / MM_PER_INCH),
    }
}

/// The setting that the dials show, label by label.
pub fn setting(design: &Design, view: &ViewState) -> String {
    let labels: Vec<String> = design
        .dials
        .iter()
        .enumerate()
        .map(|(index, dial)| dial.label(view.mark(design, index)))
        .collect();
    labels.join(" ")
}

/// What the slider would do with the dials as they stand.
pub fn stop_sentence(design: &Design, stop: &Stop) -> String {
    let units = design.units;
    match &stop.by {
        None => format!(
            "The slider goes back the whole {} and the tab leaves the keeper.",
            short_length(stop.travel, units)
        ),
        Some((dial, reach)) => {
            let held = format!(
                "Dial {} stops the slider after {}: {}. {} of tab still held.",
                dial + 1,
                short_length(stop.travel, units),
                touched(reach.stops_at),
                short_length(stop.held, units)
            );
            match reach.stops_at {
                StopsAt::Mouth | StopsAt::Wall => {
                    format!("{held} A push may turn the dial on, so this is no lock.")
                }
                _ => held,
            }
        }
    }
}

/// The plan in words, for those who do not see it: how the dials stand, where the slider is, and how
/// much of the tab is held.
pub fn plan(design: &Design, view: &ViewState, stop: &Stop) -> String {
    let dials: Vec<String> = design
        .dials
        .iter()
        .enumerate()
        .map(|(index, dial)| {
            let label = dial.label(view.mark(design, index));
            format!("dial {} at {label}", index + 1)
        })
        .collect();
    let dials = if dials.is_empty() {
        "no dial".to_owned()
    } else {
        dials.join(", ")
    };
    let travel = view.pose.travel;
    let at = short_length(travel, design.units);
    let at_stop = travel >= stop.travel - 1e-6;
    let slider = match &stop.by {
        Some((dial, _)) if at_stop => format!("slider stopped at dial {}, {at}", dial + 1),
        None if at_stop => format!("slider back the whole {at}"),
        _ if travel > 0.0 => format!("slider {at} back"),
        _ => "slider forward".to_owned(),
    };
    let held = (design.tab.engagement - travel).max(0.0);
    let held = short_length(held, design.units);
    format!("Plan: {dials}; {slider}; {held} held")
}

/// The exact value of a length with its unit.
pub fn length(mm: f64, units: Units) -> String {
    show_length_unit(mm, units)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::view_state::PoseChange;
    use latchwright_proof::slide;

    fn plan(design: &Design, view: &ViewState) -> String {
        let stop = slide(design, &view.pose.turns_deg);
        super::plan(design, view, &stop)
    }

    #[test]
    fn the_stop_is_said_in_one_breath() {
        let design = Design::default();
        let view = ViewState::of(&design);
        let stop = slide(&design, &view.pose.turns_deg);
        assert_eq!(setting(&design, &view), "4 6 2");
        assert_eq!(
            stop_sentence(&design, &stop),
            "Dial 2 stops the slider after 3.0 mm: plain rim. 5.0 mm of tab still held."
        );
    }

    #[test]
    fn the_plan_is_said_with_dials_slider_and_tab() {
        let design = Design::default();
        let mut view = ViewState::of(&design);
        assert_eq!(
            plan(&design, &view),
            "Plan: dial 1 at 4, dial 2 at 6, dial 3 at 2; slider stopped at dial 2, 3.0 mm; 5.0 mm held"
        );
        view.pose.travel = 0.0;
        assert!(plan(&design, &view).ends_with("; slider forward; 8.0 mm held"));
        let mark = design.combination[1];
        view.change_pose(&design, &PoseChange::Mark { dial: 1, mark });
        view.change_pose(&design, &PoseChange::SlideOver);
        assert!(plan(&design, &view).ends_with("; slider back the whole 11.0 mm; 0.0 mm held"));
    }

    #[test]
    fn a_stop_that_a_push_can_overcome_is_called_no_lock() {
        let mut design = Design::default();
        for dial in &mut design.dials {
            dial.positions = 36;
        }
        let mut view = ViewState::of(&design);
        let [one, two, three] = [0, 1, 2].map(|dial| design.combination[dial]);
        let marks = vec![(0, one), (1, two + 1), (2, three)];
        view.change_pose(&design, &PoseChange::Marks(marks));
        let said = stop_sentence(&design, &slide(&design, &view.pose.turns_deg));
        assert!(
            said.contains("mouth corner") && said.ends_with("this is no lock."),
            "{said}"
        );
    }
}
