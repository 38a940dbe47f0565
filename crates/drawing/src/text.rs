//! How wide words are, by estimate: a drawing has no font, but its words must not run into each
//! other.
//!
//! The estimate follows a plain humanist sans serif and errs on the wide side.

/// Width of `text` set at `height_mm` (size of the type), mm.
pub fn text_width(text: &str, height_mm: f64) -> f64 {
    text.chars().map(advance).sum::<f64>() * height_mm
}

/// Advance of one character as a share of the size of the type.
fn advance(c: char) -> f64 {
    match c {
        'i' | 'j' | 'l' | '.' | ',' | ':' | ';' | '\'' | '|' | '!' | ' ' => 0.29,
        'I' | 'f' | 'r' | 't' | '(' | ')' | '[' | ']' | '-' | '/' => 0.4,
        'm' | 'M' | 'W' | '%' | '@' => 0.95,
        'w' | 'Q' | 'O' | 'G' | 'N' | 'H' | 'D' | 'U' => 0.79,
        '0'..='9' | 'a'..='z' => 0.6,
        // Combining marks stand on the letter before them.
        '\u{300}'..='\u{36f}' => 0.0,
        // From Hangul on, most scripts are set full width.
        '\u{1100}'.. => 1.0,
        // Capitals, and letters of most other scripts.
        _ => 0.66,
    }
}

#[cfg(test)]
mod tests {
    use super::text_width;

    #[test]
    fn width_grows_with_size_and_length() {
        assert!((text_width("12", 4.0) - 4.8).abs() < 1e-9);
        assert!(text_width("keeper", 4.0) > text_width("tab", 4.0));
        assert_eq!(text_width("", 4.0), 0.0);
        assert_eq!(text_width("e\u{301}", 4.0), text_width("e", 4.0));
    }
}
