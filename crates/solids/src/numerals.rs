//! Figures and capital letters of our own, made of strokes with round ends.
//!
//! They serve where no outlines of a font are handed in. Each is drawn in a cell 4 wide and 6 high.

use latchwright_geometry::Point;

use crate::fault::MeshFault;
use crate::outline::Outline;
use crate::region::Region;

/// Width and height of a cell, and the gap between two.
const CELL: (f64, f64, f64) = (4.0, 6.0, 1.6);

/// Strokes of one character as strings of points: two digits a point (x, y), strokes apart by a
/// space. `None` for a character that is not in the set.
fn strokes(character: char) -> Option<&'static str> {
    Some(match character {
        '0' | 'O' => "100105163645413010",
        '1' => "152620 1030",
        '2' => "05163645440040",
        '3' => "05163645443313 334241301001",
        '4' => "30360242",
        '5' => "460603334241301001",
        '6' => "4536160501103041423303",
        '7' => "064610",
        '8' => "130405163645443313 3342413010010213",
        '9' => "0110304145361605041343",
        'A' => "002640 1232",
        'B' => "00063645443303 3342413000",
        'C' => "4536160501103041",
        'D' => "00062644422000",
        'E' => "46060040 0333",
        'F' => "460600 0333",
        'G' => "45361605011030414323",
        'H' => "0600 4640 0343",
        'I' => "2620 1636 1030",
        'J' => "464130100102",
        'K' => "0600 460340",
        'L' => "060040",
        'M' => "0006234640",
        'N' => "00064046",
        'P' => "00063645443303",
        'Q' => "100105163645413010 2240",
        'R' => "00063645443303 2340",
        'S' => "453616050413334241301001",
        'T' => "0646 2620",
        'U' => "060110304146",
        'V' => "062046",
        'W' => "0610233046",
        'X' => "0640 0046",
        'Y' => "062346 2320",
        'Z' => "06460040",
        '-' => "0343",
        _ => return None,
    })
}

/// The word as one region, `height` mm high, its middle at the origin, upright along +y; `None` if
/// it is empty or has a character that is not in the set.
///
/// # Errors
/// [`MeshFault`] only if the height is out of range.
pub fn word(text: &str, height: f64, line: f64) -> Result<Option<Region>, MeshFault> {
    let text = text.trim().to_uppercase();
    let count = text.chars().count();
    if count == 0 || count > 6 {
        return Ok(None);
    }
    let scale = (height - line) / CELL.1;
    let width = (CELL.0 + CELL.2) * count as f64 - CELL.2;
    let mut all = Vec::new();
    for (index, character) in text.chars().enumerate() {
        let Some(strokes) = strokes(character) else {
            return Ok(None);
        };
        let left = (CELL.0 + CELL.2) * index as f64 - width / 2.0;
        for stroke in strokes.split_whitespace() {
            let digits: Vec<f64> = stroke
                .chars()
                .filter_map(|digit| digit.to_digit(10).map(f64::from))
                .collect();
            let points: Vec<Point> = digits
                .chunks_exact(2)
                .map(|pair| Point::new(pair[0] + left, pair[1] - CELL.1 / 2.0) * scale)
                .collect();
            for pair in points.windows(2) {
                all.push(Outline::capsule(pair[0], pair[1], line / 2.0));
            }
        }
    }
    Region::union(all).plus(&Region::default()).map(Some)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_figure_and_letter_is_of_one_height_and_no_wider_than_its_cell() {
        for character in ('0'..='9').chain('A'..='Z') {
            let region = word(&character.to_string(), 5.0, 0.8).unwrap().unwrap();
            let (low, high) = region.bounds().unwrap();
            assert!((high.y - low.y - 5.0).abs() < 0.03, "{character}");
            assert!(high.x - low.x <= 3.7, "{character}");
        }
    }

    #[test]
    fn words_in_other_scripts_are_left_to_outlines_handed_in() {
        assert_eq!(word("茶", 5.0, 0.8).unwrap(), None);
        assert_eq!(word(" ", 5.0, 0.8).unwrap(), None);
    }
}
