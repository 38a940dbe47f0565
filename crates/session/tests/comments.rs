//! Comments in a design file: none is lost, each stays with what it belongs to.

mod any_design;

use std::fs;
use std::sync::Arc;

use latchwright_model::{Design, Labels, Material};
use latchwright_session::Session;
use latchwright_session::format::{Comments, read, write, write_with};
use latchwright_session::recovery::{Copies, Work, left_behind};
use proptest::collection::vec;
use proptest::prelude::*;

/// What a text is saved as, once it has been read.
fn saved(text: &str) -> String {
    let loaded = read(text.as_bytes()).unwrap_or_else(|err| panic!("{err}\n{text}"));
    write_with(&loaded.design, &loaded.comments).expect("it can be written")
}

/// The text of the usual box with some words of it replaced.
fn with(changes: &[(&str, &str)]) -> String {
    let mut text = write(&Design::default()).expect("it can be written");
    for (from, to) in changes {
        assert!(text.contains(from), "{from}");
        text = text.replacen(from, to, 1);
    }
    text
}

#[track_caller]
fn has(text: &str, lines: &str) {
    assert!(text.contains(lines), "{lines}\nis not in\n{text}");
}

#[test]
fn a_file_without_comments_is_saved_as_ever() {
    let design = Design::default();
    let text = write(&design).unwrap();
    let loaded = read(text.as_bytes()).unwrap();
    assert!(loaded.comments.is_empty());
    assert_eq!(write_with(&design, &loaded.comments).unwrap(), text);
    assert_eq!(write_with(&design, &Comments::default()).unwrap(), text);
}

#[test]
fn a_comment_stays_over_behind_or_in_what_it_belongs_to() {
    let text = with(&[
        (
            "(\n    format",
            "// For Anna.\n/* drawn in May */\n( // one box\n    format",
        ),
        (
            "    plate: (",
            "    // the lid, from the old drawer\n    plate: (",
        ),
        (
            "    tab: (at: 0.0,",
            "    tab: (at: 0.0, // in the middle\n       ",
        ),
        ("engagement: 8.0,", "/* measured */ engagement: 8.0,"),
        (
            "    combination: [3, 6, 1],",
            "    combination: [3, /* hers */ 6, 1], // her birthday",
        ),
        ("    season: (", "    season: ( // our cellar\n"),
        (
            "    own_woods: [],",
            "    own_woods: [\n  // none yet\n ],\n    // to do: the bench",
        ),
    ]);
    let text = format!("{text}// the end\n");
    let again = saved(&text);
    assert!(
        again.starts_with("// For Anna.\n/* drawn in May */\n( // one box\n    format: 1,\n"),
        "{again}"
    );
    has(
        &again,
        "\n    // the lid, from the old drawer\n    plate: (\n",
    );
    has(
        &again,
        "    tab: (\n        at: 0.0, // in the middle\n        width: 40.0,\n        \
         /* measured */\n        engagement: 8.0,\n        required_hold: 1.5,\n    ),\n",
    );
    has(
        &again,
        "    combination: [\n        3,\n        /* hers */\n        6,\n        1,\n    \
         ], // her birthday\n",
    );
    has(&again, "    season: ( // our cellar\n        built: (");
    has(
        &again,
        "    own_woods: [\n        // none yet\n    ],\n    // to do: the bench\n    bench: (",
    );
    assert!(again.ends_with(")\n// the end\n"), "{again}");
    assert_eq!(saved(&again), again, "saved twice");
    assert_eq!(
        read(again.as_bytes()).unwrap().design,
        Design::default(),
        "comments say nothing to the program"
    );
}

#[test]
fn a_comment_on_a_dial_follows_it_when_another_is_taken_away() {
    let mut text = with(&[]);
    for (place, word) in [(-55.0, "left"), (0.0, "middle"), (55.0, "right")] {
        let centre = format!("            centre: ({place:?}, 106.0),");
        let marked = format!("            // the {word} one\n{centre} // {word}\n           ");
        assert!(text.contains(&centre), "{text}");
        text = text.replacen(&centre, &marked, 1);
    }
    let loaded = read(text.as_bytes()).unwrap();
    let mut design = loaded.design.clone();
    design.dials.remove(1);
    design.combination.remove(1);
    design.dials[1].pin.diameter = 4.5;
    let text = write_with(&design, &loaded.comments).unwrap();
    for (place, word) in [(-55.0, "left"), (55.0, "right")] {
        has(
            &text,
            &format!(
                "            // the {word} one\n            centre: ({place:?}, 106.0), // {word}\n"
            ),
        );
    }
    has(
        &text,
        "    // the middle one\n    // middle\n    dials: [\n",
    );
    assert_eq!(saved(&text), text);
}

#[test]
fn a_comment_whose_field_has_gone_stands_over_its_part() {
    let text = with(&[
        (
            "material: Plywood,\n    ),\n    tab",
            "material: Wood(\n// from the shed\n species: \"white oak\", sawn: Flat, grain: AlongX),\n    ),\n    tab",
        ),
        ("labels: Digits", "labels: Words([\"a\", /* bee */ \"b\"])"),
        ("title:", "colour: 3, // red\n    title:"),
    ]);
    let loaded = read(text.as_bytes()).unwrap();
    assert_eq!(loaded.unknown.len(), 1);
    let mut design = loaded.design.clone();
    design.slider.material = Material::Plywood;
    assert!(matches!(design.dials[0].labels, Labels::Words(_)));
    let text = write_with(&design, &loaded.comments).unwrap();
    has(
        &text,
        "        // from the shed\n        material: Plywood,\n",
    );
    assert!(text.starts_with("// red\n(\n"), "{text}");
    has(
        &text,
        "            labels: Words([\n                \"a\",\n                /* bee */\n                \"b\",\n            ]),\n",
    );
    assert_eq!(saved(&text), text);
    design.dials[0].labels = Labels::Digits;
    let text = write_with(&design, &loaded.comments).unwrap();
    has(
        &text,
        "            /* bee */\n            labels: Digits,\n",
    );
}

#[test]
fn places_where_few_would_put_one_are_kept_too() {
    for (from, to, expected) in [
        (
            "title:",
            "title /* a */ : // b\n",
            "    /* a */\n    // b\n    title:",
        ),
        (
            "guide_at: (0.0,",
            "guide_at: ( /* x */ 0.0, // y\n",
            "        guide_at: (\n            /* x */\n            0.0, // y\n            29.0,\n        ),\n",
        ),
        (
            "tab: (at: 0.0,",
            "tab: (at: 0.0 // a\n , // b\n",
            "        at: 0.0, // a\n        // b\n        width: 40.0,",
        ),
        (
            "required_hold: 1.5),",
            "required_hold: 1.5 /* a */) /* b */, // c\n",
            "        required_hold: 1.5, /* a */\n    ), /* b */ // c\n",
        ),
        (
            "combination: [3,",
            "combination: [ /* one\n     two */ 3,",
            "    combination: [\n        /* one\n     two */\n        3,",
        ),
        (
            "engagement: 8.0,",
            "engagement: 8.0, /* /* in */ \" ( */\r\n // crlf \r\n",
            "        engagement: 8.0, /* /* in */ \" ( */\n        // crlf\n",
        ),
    ] {
        let text = with(&[(from, to)]);
        let again = saved(&text);
        has(&again, expected);
        assert_eq!(saved(&again), again, "{from}");
    }
}

#[test]
fn comments_survive_edits_undo_saving_and_saving_as() {
    let folder = tempfile::tempdir().unwrap();
    let [path, other] = ["box.latch.ron", "other.latch.ron"].map(|name| folder.path().join(name));
    let commented = "            // the right one\n            centre: (55.0, 106.0),";
    let text = saved(&with(&[("            centre: (55.0, 106.0),", commented)]));
    fs::write(&path, &text).unwrap();
    let mut session = Session::open(&path).unwrap();
    session.save_anyway().unwrap();
    assert_eq!(fs::read_to_string(&path).unwrap(), text);
    session.edit("take the dial away", |design| {
        design.dials.pop();
        design.combination.pop();
    });
    session.save().unwrap();
    has(
        &fs::read_to_string(&path).unwrap(),
        "    // the right one\n    dials: [\n",
    );
    session.undo();
    session.save_as(&other).unwrap();
    assert_eq!(
        fs::read_to_string(&other).unwrap(),
        text,
        "the dial is back"
    );
}

#[test]
fn comments_survive_in_copies_of_unsaved_work() {
    let folder = tempfile::tempdir().unwrap();
    let text = saved(&with(&[("title:", "// whose it is\n    title:")]));
    let text = format!("// unsaved work, says its maker\n{text}");
    let loaded = read(text.as_bytes()).unwrap();
    let copies = Copies::start(folder.path(), std::time::Duration::ZERO, || ());
    copies.keep(Work {
        design: Arc::new(loaded.design),
        comments: loaded.comments,
        file: None,
    });
    drop(copies);
    let start = std::time::Instant::now();
    let mut left = left_behind(folder.path());
    while left.is_empty() && start.elapsed().as_secs() < 20 {
        left = left_behind(folder.path());
    }
    let mut session = left.first().expect("work left behind").session();
    let path = folder.path().join("taken-up.latch.ron");
    session.save_as(&path).unwrap();
    assert_eq!(fs::read_to_string(&path).unwrap(), text, "and no line more");
}

#[test]
fn only_comments_on_what_was_taken_over_go_along() {
    let text = with(&[
        ("(\n    format", "// Anna's\n(\n    format"),
        ("title:", "// hers\n    title:"),
        ("bits: [", "// sharpened in May\n bits: ["),
    ]);
    let bench = read(text.as_bytes()).unwrap().comments.within(&["bench"]);
    let text = write_with(&Design::default(), &bench).unwrap();
    has(&text, "        // sharpened in May\n        bits: [");
    assert!(!text.contains("Anna's") && !text.contains("hers"), "{text}");
}

#[test]
fn comments_without_end_are_refused_and_as_many_as_a_design_may_have_are_kept() {
    let bomb = |count: usize| with(&[("title:", &format!("{} title:", "/* x */ ".repeat(count)))]);
    let sentence = read(bomb(10_001).as_bytes()).unwrap_err().to_string();
    assert_eq!(
        sentence,
        "line 3, column 80005: more than 10000 comments stand before this, which no design has; \
         is it a file of another kind?"
    );
    let text = saved(&bomb(10_000));
    assert_eq!(text.matches("/* x */").count(), 10_000);
    assert_eq!(saved(&text), text);
}

#[test]
fn comments_that_would_make_the_file_too_large_to_be_opened_are_not_saved() {
    let long = format!("/* {} */", "x".repeat(4 * 1024 * 1024 - 20_000));
    let text = with(&[("title:", &format!("{long} title:"))]);
    let loaded = read(text.as_bytes()).unwrap();
    let mut design = loaded.design;
    design.title = "t".repeat(20_000);
    let refusal = write_with(&design, &loaded.comments).unwrap_err();
    assert!(
        refusal
            .to_string()
            .ends_with("and can have at most 4194304; shorten its comments or words"),
        "{refusal}"
    );
}

#[test]
fn a_comment_that_is_never_closed_is_refused() {
    for text in [
        "(format: 1, /* title: \"x\")",
        "(format: 1) /* /* */",
        "(format: 1, /*/ tab: ())",
    ] {
        let sentence = read(text.as_bytes()).unwrap_err().to_string();
        assert!(sentence.contains("never closed"), "{sentence}");
    }
}

/// A comment to be put into a text: of what kind, and how far in.
type Put = (usize, f64);

/// Bodies that could be taken for something else; each is given a number of its own.
const BODIES: [(&str, &str); 7] = [
    ("// plain ", "\n"),
    ("// \"(tab: /* ", "\n"),
    ("//", "\n\n"),
    ("/* inline ", " */"),
    ("/* two\n    lines ) ", "\n*/"),
    ("/* /* nested // */ \" ", " */"),
    ("/*", "*/\n"),
];

/// Bytes of `text` between which nothing but space may stand: outside of words and strings.
fn gaps(text: &str) -> Vec<usize> {
    let (mut found, mut quoted, mut escaped) = (vec![0], false, false);
    for (at, c) in text.char_indices() {
        if quoted {
            quoted = escaped || c != '"';
            escaped = !escaped && c == '\\';
        } else if c == '"' {
            quoted = true;
        } else if "([,:) \n]".contains(c) {
            found.push(at + 1);
            // the name of a variant stands against its bracket
            let names = text[..at].ends_with(|c: char| c.is_alphanumeric());
            if !(c == '(' && names) {
                found.push(at);
            }
        }
    }
    found
}

/// `text` with comments put into it, and these.
fn commented(text: &str, puts: &[Put]) -> (String, Vec<String>) {
    let gaps = gaps(text);
    let mut cuts: Vec<(usize, String, &str)> = Vec::new();
    for (number, (body, share)) in puts.iter().enumerate() {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "a share of a list"
        )]
        let at = ((gaps.len() - 1) as f64 * share) as usize;
        let gap = gaps[at];
        let (start, end) = BODIES[*body % BODIES.len()];
        let inside = end.trim_end();
        cuts.push((gap, format!("{start}<{number}>{inside}"), end));
    }
    let comments = cuts.iter().map(|(_, comment, _)| comment.clone()).collect();
    cuts.sort_by_key(|(gap, ..)| *gap);
    let mut out = text.to_owned();
    for (gap, comment, end) in cuts.iter().rev() {
        let space = &end[end.trim_end().len()..];
        out.insert_str(*gap, &format!(" {comment}{space} "));
    }
    (out, comments)
}

fn each_once(text: &str, comments: &[String]) -> Result<(), TestCaseError> {
    for comment in comments {
        prop_assert_eq!(
            text.matches(comment.as_str()).count(),
            1,
            "{}\n{}",
            comment,
            text
        );
    }
    Ok(())
}

proptest! {
    #[test]
    fn every_comment_is_saved_once_and_the_design_is_the_same(
        design in any_design::design(),
        other in any_design::design(),
        puts in vec((0..BODIES.len(), 0.0..1.0_f64), 1..30),
    ) {
        let (text, comments) = commented(&write(&design).unwrap(), &puts);
        let loaded = read(text.as_bytes()).map_err(|err| TestCaseError::fail(format!("{err}\n{text}")))?;
        prop_assert_eq!(&loaded.design, &design);
        let once = write_with(&design, &loaded.comments).unwrap();
        each_once(&once, &comments)?;
        let again = read(once.as_bytes()).map_err(|err| TestCaseError::fail(format!("{err}\n{once}")))?;
        prop_assert_eq!(&again.design, &design);
        prop_assert_eq!(write_with(&design, &again.comments).unwrap(), once);
        // whatever has become of the design
        let changed = write_with(&other, &loaded.comments).unwrap();
        each_once(&changed, &comments)?;
        let again = read(changed.as_bytes()).map_err(|err| TestCaseError::fail(format!("{err}\n{changed}")))?;
        prop_assert_eq!(&again.design, &other);
        prop_assert_eq!(write_with(&other, &again.comments).unwrap(), changed);
    }

    #[test]
    fn a_dial_or_slot_that_is_taken_away_takes_no_comment_of_another_along(
        gone in 0..4_usize,
        changed in 0..4_usize,
    ) {
        let mut design = Design::default();
        let mut dial = design.dials[2].clone();
        dial.centre.0 = 110.0;
        design.dials.push(dial);
        let mut text = write(&design).unwrap();
        for dial in &design.dials {
            let centre = format!("            centre: ({:?},", dial.centre.0);
            prop_assert!(text.contains(&centre));
            text = text.replacen(&centre, &format!("// at {:?}\n{centre}", dial.centre.0), 1);
        }
        let loaded = read(text.as_bytes()).unwrap();
        let mut after = loaded.design.clone();
        after.dials[changed].knob.diameter += 1.0;
        after.dials.remove(gone);
        let text = write_with(&after, &loaded.comments).unwrap();
        for dial in &after.dials {
            let x = dial.centre.0;
            let line = format!("            // at {x:?}\n            centre: ({x:?}, ");
            prop_assert!(text.contains(&line), "{}\n{}", line, text);
        }
        let x = design.dials[gone].centre.0;
        let line = format!("    // at {x:?}\n    dials: [");
        prop_assert!(text.contains(&line), "{}\n{}", line, text);
    }

    #[test]
    fn any_text_with_comments_is_read_or_refused_without_a_panic(
        text in "(/\\*|\\*/|//|\n|[(){}\\[\\]\"'#r:,a-c0-9. ]){0,200}",
    ) {
        for text in [format!("(format: 1, {text})"), format!("{text}(format: 1){text}")] {
            if let Ok(loaded) = read(text.as_bytes()) {
                let once = write_with(&loaded.design, &loaded.comments).unwrap();
                let again = read(once.as_bytes());
                let again = again.map_err(|err| TestCaseError::fail(format!("{err}\n{once}")))?;
                prop_assert_eq!(write_with(&again.design, &again.comments).unwrap(), once);
            }
        }
    }
}
