//! A setting as people type it: one label of each dial, with or without something between.

use itertools::Itertools;

use crate::Design;
use crate::validate::MAX_POSITIONS;

/// Why a text is no setting of a design. Dials count from 0.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SettingError {
    /// The design has no dial.
    NoDial,
    /// Labels can be cut out of the text in several ways.
    SeveralReadings,
    /// A dial bears this label at several marks.
    SeveralMarks {
        /// Which dial.
        dial: usize,
        /// The label as typed.
        label: String,
    },
    /// A dial has no such label.
    NoSuchLabel {
        /// Which dial.
        dial: usize,
        /// The label as typed.
        label: String,
        /// Its first label.
        first: String,
        /// Its last.
        last: String,
    },
    /// The text is not one label a dial.
    NotOneADial {
        /// How many dials there are.
        dials: usize,
        /// The labels of a setting that would be read, for the first dozen of them.
        example: Vec<String>,
    },
}

/// Dials whose labels are given as an example.
const EXAMPLE: usize = 12;

/// The marks of the setting that is typed, such as `4 7 2`, `4-7-2` or `ABC`. Small letters will do
/// unless two labels differ in nothing else.
///
/// # Errors
/// What is missing, unknown or can be read in several ways.
pub fn read_setting(design: &Design, text: &str) -> Result<Vec<u32>, SettingError> {
    let rings: Vec<Vec<String>> = design
        .dials
        .iter()
        .map(|dial| {
            let marks = 0..dial.positions.min(MAX_POSITIONS);
            marks
                .map(|mark| dial.label(mark).trim().to_owned())
                .collect()
        })
        .collect();
    let parts: Vec<&str> = text
        .split(between)
        .filter(|part| !part.is_empty())
        .collect();
    if let Some(marks) = one_a_dial(&rings, &parts) {
        return Ok(marks);
    }
    match readings(&rings, &parts.join(" ")).as_slice() {
        [marks] => Ok(marks.clone()),
        [] => Err(wrong(design, &rings, &parts)),
        _ => Err(SettingError::SeveralReadings),
    }
}

/// Whether this may stand between two labels.
fn between(letter: char) -> bool {
    letter.is_whitespace() || matches!(letter, ',' | ';' | '-' | '–' | '/' | '·')
}

/// The marks where each part is the label of one dial.
fn one_a_dial(rings: &[Vec<String>], parts: &[&str]) -> Option<Vec<u32>> {
    if rings.is_empty() || rings.len() != parts.len() {
        return None;
    }
    let marks = rings.iter().zip(parts);
    marks.map(|(ring, part)| mark_of(ring, part).ok()).collect()
}

/// The one mark of this label; `Err(true)` where there are several, `Err(false)` where there is none.
fn mark_of(ring: &[String], part: &str) -> Result<u32, bool> {
    let small = part.to_lowercase();
    let exact: Vec<u32> = marks_of(ring, |label| label == part);
    let found = if exact.is_empty() {
        marks_of(ring, |label| label.to_lowercase() == small)
    } else {
        exact
    };
    match found.as_slice() {
        [mark] => Ok(*mark),
        several => Err(!several.is_empty()),
    }
}

fn marks_of(ring: &[String], asked: impl Fn(&str) -> bool) -> Vec<u32> {
    let found = (0_u32..).zip(ring).filter(|(_, label)| asked(label));
    found.map(|(mark, _)| mark).collect()
}

/// A text with one space in place of whatever may stand between labels.
fn plain(text: &str) -> String {
    text.split(between)
        .filter(|part| !part.is_empty())
        .join(" ")
}

/// Up to two ways to read a text as labels with or without a space between.
///
/// Dial by dial, every place in the text that the labels so far can reach, with at most two ways to
/// it: never more work than dials × places × labels.
fn readings(rings: &[Vec<String>], text: &str) -> Vec<Vec<u32>> {
    let mut reached: Vec<(usize, Vec<u32>)> = vec![(0, Vec::new())];
    for ring in rings {
        let ring: Vec<String> = ring.iter().map(|label| plain(label)).collect();
        let mut next: Vec<(usize, Vec<u32>)> = Vec::new();
        for (at, marks) in &reached {
            let rest = text.get(*at..).unwrap_or("");
            let start = at + rest.len() - rest.trim_start().len();
            for (mark, length) in beginning(&ring, rest.trim_start()) {
                let to = start + length;
                if next.iter().filter(|(known, _)| *known == to).count() < 2 {
                    let marks = marks.iter().copied().chain([mark]).collect();
                    next.push((to, marks));
                }
            }
        }
        reached = next;
    }
    let whole = reached.into_iter().filter(|(at, _)| *at == text.len());
    whole
        .map(|(_, marks)| marks)
        .filter(|marks| !marks.is_empty())
        .collect()
}

/// The labels with which a text begins and their lengths in it; one in other capitals only where
/// none of that length begins it as it stands.
fn beginning(ring: &[String], text: &str) -> Vec<(u32, usize)> {
    let labels = || (0_u32..).zip(ring).filter(|(_, label)| !label.is_empty());
    let exact = labels().filter(|(_, label)| text.starts_with(label.as_str()));
    let mut found: Vec<(u32, usize)> = exact.map(|(mark, label)| (mark, label.len())).collect();
    let exact = found.len();
    for (mark, label) in labels() {
        if let Some(length) = begins(text, label)
            && !found.iter().take(exact).any(|(_, known)| *known == length)
        {
            found.push((mark, length));
        }
    }
    found
}

/// How much of a text is this label in any capitals.
fn begins(text: &str, label: &str) -> Option<usize> {
    let mut letters = text.chars();
    for wanted in label.chars() {
        let letter = letters.next()?;
        if !letter.to_lowercase().eq(wanted.to_lowercase()) {
            return None;
        }
    }
    Some(text.len() - letters.as_str().len())
}

/// Why no setting can be read.
fn wrong(design: &Design, rings: &[Vec<String>], parts: &[&str]) -> SettingError {
    if rings.is_empty() {
        return SettingError::NoDial;
    }
    if parts.len() == rings.len() {
        for (dial, (ring, part)) in rings.iter().zip(parts).enumerate() {
            let label = (*part).to_owned();
            match mark_of(ring, part) {
                Ok(_) => {}
                Err(true) => return SettingError::SeveralMarks { dial, label },
                Err(false) => {
                    return SettingError::NoSuchLabel {
                        dial,
                        label,
                        first: ring.first().cloned().unwrap_or_default(),
                        last: ring.last().cloned().unwrap_or_default(),
                    };
                }
            }
        }
    }
    let dials = design.dials.iter().take(EXAMPLE).enumerate();
    SettingError::NotOneADial {
        dials: rings.len(),
        example: dials
            .map(|(index, dial)| dial.label(design.digit(index)))
            .collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Labels;

    fn latch(labels: Labels, positions: u32, dials: usize) -> Design {
        let mut design = Design::default();
        let mut dial = design.dials[0].clone();
        (dial.labels, dial.positions) = (labels, positions);
        design.dials = vec![dial; dials];
        design.combination = vec![1; dials];
        design
    }

    #[test]
    fn labels_are_read_with_spaces_other_signs_or_nothing_between() {
        let digits = latch(Labels::Digits, 8, 3);
        for text in ["4 7 2", "472", " 4-7-2 ", "4,7;2", "4 72", "4 – 7 – 2"] {
            assert_eq!(read_setting(&digits, text), Ok(vec![3, 6, 1]), "{text}");
        }
        let letters = latch(Labels::Letters, 30, 3);
        for text in ["ABC", "abc", "A b C", "a/b/c"] {
            assert_eq!(read_setting(&letters, text), Ok(vec![0, 1, 2]), "{text}");
        }
        assert_eq!(read_setting(&letters, "AA AB D"), Ok(vec![26, 27, 3]));
    }

    #[test]
    fn spaces_decide_where_figures_alone_could_be_read_in_two_ways() {
        let dozen = latch(Labels::Digits, 12, 2);
        assert_eq!(read_setting(&dozen, "1 12"), Ok(vec![0, 11]));
        assert_eq!(read_setting(&dozen, "1112"), Ok(vec![10, 11]));
        assert_eq!(
            read_setting(&dozen, "112"),
            Err(SettingError::SeveralReadings)
        );
    }

    #[test]
    fn words_may_hold_spaces_and_differ_only_in_capitals() {
        let words = ["old oak", "rose", "Rose", "X-ray"].map(str::to_owned);
        let design = latch(Labels::Words(words.to_vec()), 4, 2);
        assert_eq!(read_setting(&design, "Old Oak Rose"), Ok(vec![0, 2]));
        assert_eq!(read_setting(&design, "rose, old oak"), Ok(vec![1, 0]));
        assert_eq!(read_setting(&design, "x-ray rose"), Ok(vec![3, 1]));
        assert_eq!(
            read_setting(&design, "ROSE rose"),
            Err(SettingError::SeveralReadings),
            "which of two"
        );
        let which = SettingError::SeveralMarks {
            dial: 0,
            label: "ROSE".to_owned(),
        };
        assert_eq!(read_setting(&design, "ROSE pine"), Err(which));
    }

    #[test]
    fn what_is_no_setting_says_what_to_type() {
        let design = latch(Labels::Digits, 8, 3);
        let why = |text| read_setting(&design, text).unwrap_err();
        let too_few = SettingError::NotOneADial {
            dials: 3,
            example: vec!["2".to_owned(); 3],
        };
        assert_eq!(why("4 7"), too_few);
        assert_eq!(why(""), too_few);
        let no_nine = SettingError::NoSuchLabel {
            dial: 1,
            label: "9".to_owned(),
            first: "1".to_owned(),
            last: "8".to_owned(),
        };
        assert_eq!(why("4 9 2"), no_nine);
        let none = latch(Labels::Digits, 8, 0);
        assert_eq!(read_setting(&none, ""), Err(SettingError::NoDial));
    }

    #[test]
    fn twelve_dials_of_360_are_read_and_a_long_row_of_ones_ends() {
        let design = latch(Labels::Digits, 360, 12);
        let text = (349..=360).join(" ");
        assert_eq!(read_setting(&design, &text), Ok((348..360).collect()));
        assert!(read_setting(&design, &"1".repeat(20)).is_err());
        assert!(read_setting(&design, &"1".repeat(5000)).is_err());
    }
}
