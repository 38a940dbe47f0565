//! What is no design file is refused with a sentence, in no time and without a panic.

use std::time::{Duration, Instant};

use latchwright_session::format::{LARGEST, read};

const THREE_DIALS: &str = include_str!("fixtures/three-dials.ron");

/// A released program needs a tenth of this; a test build on a busy machine may take its time.
const NO_TIME: Duration = Duration::from_secs(if cfg!(debug_assertions) { 5 } else { 1 });

fn sentence(bytes: impl AsRef<[u8]>) -> String {
    let start = Instant::now();
    let sentence = read(bytes.as_ref())
        .expect_err("must be refused")
        .to_string();
    assert!(
        start.elapsed() < NO_TIME,
        "took {:?}: {sentence}",
        start.elapsed()
    );
    sentence
}

fn with(from: &str, to: &str) -> String {
    assert!(THREE_DIALS.contains(from));
    THREE_DIALS.replacen(from, to, 1)
}

#[test]
fn a_file_with_nothing_in_it() {
    for text in ["", " \n\t", "\u{FEFF}"] {
        assert_eq!(sentence(text), "the file is empty; open another copy of it");
    }
}

#[test]
fn a_file_of_zero_bytes_only() {
    let expected = "the file is 4096 zero bytes and nothing else; open another copy of it";
    assert_eq!(sentence([0; 4096]), expected);
}

#[test]
fn a_file_larger_than_any_design() {
    let bytes = vec![b' '; usize::try_from(LARGEST).unwrap() + 1];
    let expected = "the file has 4194305 bytes and a design has at most 4194304; \
                    is it a file of another kind?";
    assert_eq!(sentence(bytes), expected);
}

#[test]
fn a_file_that_is_not_text() {
    let mut bytes = b"(format: 1, title: \"".to_vec();
    bytes.push(0xE9);
    let expected = "byte 21 is not UTF-8 text; is it a file of another kind?";
    assert_eq!(sentence(bytes), expected);
}

#[test]
fn a_file_without_a_format() {
    let expected = "the file does not say its format; \
                    write `format: 1,` as its first line after `(`";
    assert_eq!(sentence(with("format: 1,", "")), expected);
    assert_eq!(sentence("()"), expected);
    assert_eq!(sentence("hello"), expected);
}

#[test]
fn a_file_of_a_newer_program_whatever_else_is_in_it() {
    let expected = "made by a newer Latchwright (format 7); this one reads format 1: \
                    use the newer program";
    assert_eq!(
        sentence("(format: 7, dials: <<< what is this >>>)"),
        expected
    );
}

#[test]
fn a_format_that_never_was() {
    let expected = "line 3, column 5, `format`: 0 is not a format; this Latchwright reads format 1";
    assert_eq!(sentence(with("format: 1,", "format: 0,")), expected);
    let expected = "line 3, column 5, `format`: \"one\" is not a format; \
                    this Latchwright reads format 1";
    assert_eq!(sentence(with("format: 1,", "format: \"one\",")), expected);
}

/// Where `marker` stands, as sentences say it.
fn place(text: &str, marker: &str) -> String {
    let before = text.split(marker).next().unwrap_or(text);
    let line = before.matches('\n').count() + 1;
    let column = before.chars().rev().take_while(|c| *c != '\n').count() + 1;
    format!("line {line}, column {column}")
}

#[test]
fn a_size_that_is_no_number() {
    for (written, shown) in [
        ("NaN", "NaN"),
        ("inf", "inf"),
        ("-inf", "-inf"),
        ("1e999", "inf"),
        ("-1e999", "-inf"),
    ] {
        let text = with(
            "bore: (diameter: 14.3",
            &format!("bore: (diameter: {written}"),
        );
        let expected = format!(
            "{}, dial 1, bore, diameter: this reads as {shown}, which is no size; \
             write a plain number",
            place(&text, written)
        );
        assert_eq!(sentence(text), expected);
    }
}

#[test]
fn a_place_that_is_no_number() {
    let text = with("guide_at: (0.0, 45.0)", "guide_at: (0.0, NaN)");
    let expected = format!(
        "{}, slider, guide_at, entry 2: this reads as NaN, which is no size; write a plain number",
        place(&text, "NaN")
    );
    assert_eq!(sentence(text), expected);
}

#[test]
fn brackets_without_end() {
    for bracket in ["(", "[", "{", "(a:", "Some(", "[("] {
        let text = format!("(format: 1, title: {}", bracket.repeat(200_000));
        let sentence = sentence(text);
        assert!(
            sentence
                .ends_with("more than 64 brackets stand inside each other, which no design has")
        );
        assert!(sentence.starts_with("line 1, column "), "{sentence}");
    }
}

#[test]
fn a_list_without_end() {
    let dial = "(positions: 8),";
    let text = format!("(format: 1, dials: [{}])", dial.repeat(1100));
    assert_eq!(
        sentence(text),
        "line 1, column 15021, dials: the list has more than 1000 entries, \
         which no latch can have; remove what does not belong"
    );
}

#[test]
fn a_file_of_nothing_but_fields_and_entries() {
    let entry = format!("[{}],", "0,".repeat(500));
    for text in [
        format!("(format: 1, {})", "a: 0,".repeat(250_000)),
        format!("(format: 1, dials: [{}])", entry.repeat(900)),
    ] {
        let sentence = sentence(text);
        let end = ": more than 100000 fields and entries stand before this, \
                   which no design has; is it a file of another kind?";
        assert!(sentence.ends_with(end), "{sentence}");
    }
}

#[test]
fn more_unknown_fields_than_can_be_a_mistake() {
    use std::fmt::Write as _;
    let mut text = "(format: 1,\n".to_owned();
    for number in 0..20_000 {
        let _ = write!(text, "f{number}: [1, 2],");
    }
    text.push(')');
    assert_eq!(
        sentence(text),
        "more than 100 fields are unknown here, the first at line 2, column 1; \
         is it a file of another kind?"
    );
}

#[test]
fn the_wrong_kind_of_thing() {
    for (from, to, marker, expected) in [
        (
            "radius: 18.0",
            "radius: \"big\"",
            "\"big\"",
            "dial 1, disc, radius: a number is expected here, such as 12.5",
        ),
        (
            "positions: 8,",
            "positions: 8.5,",
            ".5,",
            "dial 1, positions: a comma is missing",
        ),
        (
            "positions: 8,",
            "positions: -1,",
            "-1,",
            "dial 1, positions: a whole number is expected here, \
          not below nought and not beyond reason",
        ),
        (
            "positions: 8,",
            "positions: 9999999999,",
            "9999999999",
            "dial 1, positions: a whole number is expected here, \
          not below nought and not beyond reason",
        ),
        (
            "sawn: Flat",
            "sawn: Plain",
            "Plain",
            "plate, sawn: `Plain` is not known here; write Flat or Quarter",
        ),
        (
            "combination: [3, 6, 1]",
            "combination: 361",
            "361",
            "combination: a list in square brackets is expected here",
        ),
        (
            "tab: (at: 0.0,",
            "tab: (at: 0.0, at: 1.0,",
            ": 1.0,",
            "tab, at: `at` is given twice; keep one of them",
        ),
        (
            "title: \"Tea",
            "title: Tea",
            "Tea",
            "title: words in double quotes are expected here",
        ),
        (
            "guide_at: (0.0, 45.0)",
            "guide_at: 45.0",
            "45.0",
            "slider, guide_at: fields in round brackets are expected here",
        ),
    ] {
        let text = with(from, to);
        let expected = format!("{}, {expected}", place(&text, marker));
        assert_eq!(sentence(text), expected);
    }
}

#[test]
fn a_file_that_ends_too_early() {
    let text = THREE_DIALS.split("celsius: 24.0").next().unwrap();
    let sentence = sentence(text);
    assert!(
        sentence.ends_with("the file ends too early; was it cut off?"),
        "{sentence}"
    );
}

#[test]
fn something_after_the_end() {
    let sentence = sentence(format!("{THREE_DIALS}\n(format: 1)"));
    assert!(
        sentence.ends_with("something follows after the end of the design"),
        "{sentence}"
    );
}

#[test]
fn any_cut_of_a_file_is_refused_without_a_panic() {
    let end = THREE_DIALS.trim_end().len();
    for at in (0..end).filter(|at| THREE_DIALS.is_char_boundary(*at)) {
        assert!(
            read(&THREE_DIALS.as_bytes()[..at]).is_err(),
            "cut at byte {at}"
        );
    }
}

#[test]
fn any_changed_byte_is_read_or_refused_without_a_panic() {
    for at in 0..THREE_DIALS.len() {
        for byte in [
            0, b'(', b')', b'"', b'\'', b'r', b'#', b'/', b'*', b':', b'9', 0xFF,
        ] {
            let mut bytes = THREE_DIALS.as_bytes().to_vec();
            bytes[at] = byte;
            let _ = read(&bytes);
        }
    }
}

#[test]
fn four_megabytes_of_anything_take_no_time() {
    let most = usize::try_from(LARGEST).unwrap() - 40;
    for piece in [
        "/*",
        "//\n",
        "r#",
        "r\"",
        "\"",
        "'",
        "a:",
        "a,",
        ",",
        "0",
        "-",
        "[],",
        "(a:[(1)]),",
        "é",
    ] {
        let text = format!(
            "(format: 1, title: {}",
            piece.repeat(most / piece.len() / 2)
        );
        let start = Instant::now();
        let _ = read(text.as_bytes());
        assert!(start.elapsed() < NO_TIME, "{piece}: {:?}", start.elapsed());
        let text = format!(
            "(format: 1, foo: [{}])",
            piece.repeat(most / piece.len() / 2)
        );
        let start = Instant::now();
        let _ = read(text.as_bytes());
        assert!(start.elapsed() < NO_TIME, "{piece}: {:?}", start.elapsed());
    }
}
