//! Words for combinations and for settings as people type them.

use latchwright_model::combination::Weakness;
use latchwright_model::typed::SettingError;

/// The rule for combinations that this one breaks, as a sentence without a stop.
pub const fn weakness_rule(weakness: Weakness) -> &'static str {
    match weakness {
        Weakness::AllEqual => "not every dial at the same mark",
        Weakness::Run => "no run such as 1 2 3 or 3 2 1",
        Weakness::OneTurnFromLast => "never the last one with a single dial turned",
    }
}

/// Why a text is no setting, and what to type instead; without capital and full stop.
pub fn setting_error(err: &SettingError) -> String {
    match err {
        SettingError::NoDial => "there is no dial: add one under Lay out".to_owned(),
        SettingError::SeveralReadings => {
            "this can be read in several ways: put a space between the labels".to_owned()
        }
        SettingError::SeveralMarks { dial, label } => {
            format!("dial {} has \"{label}\" at several marks", dial + 1)
        }
        SettingError::NoSuchLabel {
            dial,
            label,
            first,
            last,
        } => format!(
            "dial {} has no \"{label}\": its labels go from {first} to {last}",
            dial + 1
        ),
        SettingError::NotOneADial { dials, example } => {
            let dials = match dials {
                1 => "the dial".to_owned(),
                more => format!("each of the {more} dials"),
            };
            format!("type one label of {dials}, such as {}", example.join(" "))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use latchwright_model::typed::read_setting;
    use latchwright_model::{Design, Labels};

    #[test]
    fn what_is_no_setting_says_what_to_type() {
        let mut design = Design {
            combination: vec![1, 1, 1],
            ..Design::default()
        };
        let why = |design: &Design, text| setting_error(&read_setting(design, text).unwrap_err());
        assert_eq!(
            why(&design, "4 7"),
            "type one label of each of the 3 dials, such as 2 2 2"
        );
        assert_eq!(
            why(&design, "4 9 2"),
            "dial 2 has no \"9\": its labels go from 1 to 8"
        );
        for dial in &mut design.dials {
            dial.positions = 12;
        }
        assert_eq!(
            why(&design, "1112"),
            "this can be read in several ways: put a space between the labels"
        );
        let words = ["rose", "Rose"].map(str::to_owned).to_vec();
        design.dials[0].labels = Labels::Words(words);
        design.dials.truncate(2);
        assert_eq!(
            why(&design, "ROSE oak"),
            "dial 1 has \"ROSE\" at several marks"
        );
        design.dials.remove(0);
        assert_eq!(why(&design, ""), "type one label of the dial, such as 2");
        design.dials.clear();
        assert_eq!(why(&design, "1"), "there is no dial: add one under Lay out");
    }
}
