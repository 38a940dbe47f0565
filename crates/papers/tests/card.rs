//! The card as a foreign reader finds it: one page, true size, every word, and nothing secret.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use hayro::hayro_interpret::InterpreterSettings;
use hayro::hayro_syntax::Pdf;
use hayro::{RenderSettings, render_pdf};
use latchwright_model::{CardPaper, Design, Dial, Labels};
use latchwright_papers::{Date, Fonts, PaperError, PaperOptions, card, card_pages, card_sheets};
use lopdf::{Document, Object};

const PAPERS: [(CardPaper, [f64; 2]); 3] = [
    (CardPaper::A6, [105.0, 148.0]),
    (CardPaper::A5, [148.0, 210.0]),
    (CardPaper::FoldedA4, [297.0, 210.0]),
];

fn design(paper: CardPaper) -> Design {
    let mut design = Design {
        title: "Tea box".to_owned(),
        ..Design::default()
    };
    design.card.paper = paper;
    design.card.recipient = "Zoë".into();
    design.card.greeting = "For your letters.\n\nAnd for a rainy day.".into();
    design.card.from = "Mira".into();
    design
}

fn pdf(design: &Design) -> Vec<u8> {
    card(design, &Fonts::bundled(), &PaperOptions::default()).unwrap()
}

fn refusal(design: &Design) -> PaperError {
    let sheets = card_sheets(design, &Fonts::bundled(), &PaperOptions::default());
    sheets.map(|sheets| sheets.count()).unwrap_err()
}

fn read(pdf: &[u8]) -> Document {
    Document::load_mem(pdf).unwrap()
}

/// The words of the only page, blanks dropped, since a reader puts them where it likes.
fn words(pdf: &[u8]) -> String {
    read(pdf)
        .extract_text(&[1])
        .unwrap()
        .split_whitespace()
        .collect()
}

fn name(object: &Object) -> &[u8] {
    object.as_name().unwrap()
}

#[test]
fn every_sheet_is_one_page_of_its_true_size() {
    for (paper, [width, height]) in PAPERS {
        let document = read(&pdf(&design(paper)));
        let pages = document.get_pages();
        assert_eq!(pages.len(), 1, "{paper:?}");
        let page = document.get_dictionary(pages[&1]).unwrap();
        let sheet = page.get(b"MediaBox").unwrap().as_array().unwrap();
        let corner: Vec<f64> = sheet
            .iter()
            .map(|side| f64::from(side.as_float().unwrap()))
            .collect();
        let wanted = [0.0, 0.0, width / 25.4 * 72.0, height / 25.4 * 72.0];
        for (is, should) in corner.iter().zip(wanted) {
            assert!(
                (is - should).abs() < 0.005,
                "{paper:?}: {corner:?} is not {wanted:?}"
            );
        }
    }
}

#[test]
fn printers_are_asked_not_to_scale() {
    let document = read(&pdf(&design(CardPaper::A6)));
    let preferences = document
        .catalog()
        .unwrap()
        .get(b"ViewerPreferences")
        .unwrap()
        .as_dict()
        .unwrap();
    assert_eq!(name(preferences.get(b"PrintScaling").unwrap()), b"None");
}

#[test]
fn the_file_is_tagged_has_a_title_and_a_language_and_no_date() {
    let bytes = pdf(&design(CardPaper::A6));
    let document = read(&bytes);
    let catalog = document.catalog().unwrap();
    assert_eq!(catalog.get(b"Lang").unwrap().as_str().unwrap(), b"en");
    assert!(catalog.has(b"StructTreeRoot"));
    let marked = catalog.get(b"MarkInfo").unwrap().as_dict().unwrap();
    assert!(marked.get(b"Marked").unwrap().as_bool().unwrap());
    let info = document
        .trailer
        .get(b"Info")
        .unwrap()
        .as_reference()
        .unwrap();
    let info = document.get_dictionary(info).unwrap();
    assert!(info.has(b"Title"));
    assert!(!info.has(b"CreationDate"));
    assert!(!info.has(b"ModDate"));
}

#[test]
fn a_date_is_written_when_given_and_refused_when_there_is_no_such_day() {
    let dated = |day| PaperOptions {
        date: Some(Date {
            year: 2031,
            month: 2,
            day,
        }),
    };
    let bytes = card(&design(CardPaper::A6), &Fonts::bundled(), &dated(28)).unwrap();
    let document = read(&bytes);
    let info = document
        .trailer
        .get(b"Info")
        .unwrap()
        .as_reference()
        .unwrap();
    let date = document
        .get_dictionary(info)
        .unwrap()
        .get(b"CreationDate")
        .unwrap()
        .as_str()
        .unwrap();
    assert!(date.starts_with(b"D:20310228"));
    let err = card(&design(CardPaper::A6), &Fonts::bundled(), &dated(30)).unwrap_err();
    assert_eq!(
        err,
        PaperError::Date {
            year: 2031,
            month: 2,
            day: 30
        }
    );
}

#[test]
fn every_font_is_embedded() {
    let document = read(&pdf(&design(CardPaper::A6)));
    let of_type = |wanted: &'static [u8]| {
        let dictionaries = document
            .objects
            .values()
            .filter_map(|object| object.as_dict().ok());
        dictionaries.filter(move |entry| {
            entry
                .get(b"Type")
                .is_ok_and(|kind| kind.as_name().ok() == Some(wanted))
        })
    };
    assert!(of_type(b"FontDescriptor").count() >= 2);
    let files: [&[u8]; 2] = [b"FontFile2", b"FontFile3"];
    assert!(of_type(b"FontDescriptor").all(|font| files.iter().any(|file| font.has(file))));
}

#[test]
fn the_same_design_gives_the_same_bytes() {
    for (paper, _) in PAPERS {
        assert_eq!(pdf(&design(paper)), pdf(&design(paper)), "{paper:?}");
    }
}

#[test]
fn the_card_says_whose_it_is_and_how_to_open_it() {
    for (paper, _) in PAPERS {
        let words = words(&pdf(&design(paper)));
        let said = [
            "Zoë",
            "Foryourletters.",
            "Mira",
            "Toopen",
            "Toclose",
            "Ifitsticks",
            "smallchildren",
            "notvaluables",
        ];
        for part in said {
            assert!(words.contains(part), "{paper:?} lacks {part:?} in {words}");
        }
        assert!(words.contains("Dial1to4clockwise3marks"), "{words}");
        assert!(words.contains("Dial2to7anticlockwise2marks"), "{words}");
        assert!(words.contains("Dial3to2clockwise1mark"), "{words}");
    }
}

#[test]
fn without_the_combination_two_boxes_that_differ_in_nothing_else_have_the_same_card() {
    for (paper, _) in PAPERS {
        let mut one = design(paper);
        one.card.show_combination = false;
        let mut other = one.clone();
        other.combination = vec![0, 2, 7];
        assert_eq!(pdf(&one), pdf(&other), "{paper:?}");
        one.combination = vec![99; 3];
        assert_eq!(
            pdf(&one),
            pdf(&other),
            "{paper:?}: a mark out of range shows"
        );
        assert!(!words(&pdf(&one)).contains("Dial1"));
    }
}

#[test]
fn with_the_combination_it_does_show() {
    let one = design(CardPaper::A6);
    let mut other = one.clone();
    other.combination = vec![0, 2, 7];
    assert_ne!(pdf(&one), pdf(&other));
}

#[test]
fn markup_in_the_makers_words_comes_out_as_typed() {
    let mut design = design(CardPaper::A6);
    design.card.recipient = r#"#Zoë *bold* "x" \ $a$ <b> @c `d` _e_ = f // g"#.into();
    design.card.greeting = "= no heading\n- no list\n#let x = 1".into();
    design.title = "](evil) #pagebreak()".into();
    let words = words(&pdf(&design));
    assert!(
        words.contains(r#"#Zoë*bold*"x"\$a$<b>@c`d`_e_=f//g"#),
        "{words}"
    );
    assert!(words.contains("=noheading-nolist#letx=1"), "{words}");
}

#[test]
fn names_in_many_scripts_are_drawn() {
    for recipient in [
        "Zoë",
        "Łukasz",
        "Анна",
        "Ελένη",
        "花子",
        "مريم",
        "נועה",
        "आशा",
        "Zoe\u{308}",
        "Thảo",
    ] {
        let mut design = design(CardPaper::A6);
        design.card.recipient = recipient.to_owned();
        assert_eq!(
            card_sheets(&design, &Fonts::bundled(), &PaperOptions::default())
                .unwrap()
                .count(),
            1,
            "{recipient}"
        );
        assert!(!pdf(&design).is_empty(), "{recipient}");
    }
}

#[test]
fn letters_that_cannot_be_drawn_are_named() {
    let mut design = design(CardPaper::A6);
    design.card.recipient = "𓀀".into();
    let err = refusal(&design).to_string();
    assert!(err.contains("“𓀀” (U+13000)"), "{err}");
    design.card.recipient = "a\u{7}b".into();
    assert!(refusal(&design).to_string().contains("U+0007"));
    design.card.recipient.clear();
    design.dials[0].labels = Labels::Words(vec!["ꯍ".to_owned(); 8]);
    design.card.show_combination = false;
    assert!(
        refusal(&design).to_string().contains("“ꯍ” (U+ABCD)"),
        "a label on the lid"
    );
}

#[test]
fn twelve_dials_with_words_fit_on_every_sheet() {
    let labels = [
        "oak", "ash", "beech", "cherry", "walnut", "maple", "elm", "lime", "larch", "alder",
        "birch", "rowan",
    ];
    for (paper, _) in PAPERS {
        let mut design = design(paper);
        let labels = Labels::Words(labels.map(str::to_owned).to_vec());
        let dial = |i: u8| Dial {
            centre: (
                f64::from(i % 6) * 46.0 - 115.0,
                170.0 - 70.0 * f64::from(i / 6),
            ),
            positions: 12,
            labels: labels.clone(),
            ..Dial::default()
        };
        design.plate.width = 300.0;
        design.plate.depth = 220.0;
        design.dials = (0..12).map(dial).collect();
        design.combination = (0..12).collect();
        assert_eq!(read(&pdf(&design)).get_pages().len(), 1, "{paper:?}");
        assert!(
            words(&pdf(&design)).contains("Dial12torowananticlockwise1mark"),
            "{paper:?}"
        );
    }
}

#[test]
fn a_long_greeting_shrinks_and_a_longer_one_is_refused_with_figures() {
    let mut design = design(CardPaper::A6);
    design.card.greeting = "A box for your letters and for a rainy afternoon. ".repeat(5);
    assert_eq!(read(&pdf(&design)).get_pages().len(), 1);
    design.card.greeting = design.card.greeting.repeat(8);
    let Err(PaperError::TooLong { over_mm, lines, .. }) =
        card(&design, &Fonts::bundled(), &PaperOptions::default())
    else {
        panic!("forty sentences fit on A6");
    };
    assert!((20..150).contains(&over_mm), "{over_mm}");
    assert!((5..60).contains(&lines), "{lines}");
}

#[test]
fn a_word_wider_than_its_place_is_refused_with_figures() {
    let check = |err: &PaperError| match err {
        PaperError::TooWide { word, over_mm, .. } => {
            assert_eq!(word, &format!("{}…", "M".repeat(20)));
            assert!((1..200).contains(over_mm), "{err}");
        }
        other => panic!("{other}"),
    };
    let mut design = design(CardPaper::A6);
    design.card.recipient = "M".repeat(60);
    check(&refusal(&design));
    design.card.recipient = "Zoë".into();
    design.card.greeting = "M".repeat(90);
    check(&refusal(&design));
    design.card.greeting.clear();
    design.dials[1].labels = Labels::Words(vec!["M".repeat(30); 8]);
    check(&refusal(&design));
}

#[test]
fn a_design_that_cannot_be_told_is_refused_with_place_and_remedy() {
    let mut broken = design(CardPaper::A6);
    broken.combination = vec![3, 8, 1];
    assert!(
        refusal(&broken)
            .to_string()
            .contains("dial 2 to mark 8, but its last mark is 7")
    );
    broken.plate.depth = f64::NAN;
    assert!(refusal(&broken).to_string().contains("depth is NaN mm"));
    let mut wordy = design(CardPaper::A6);
    wordy.card.greeting = "word ".repeat(1_000_000);
    assert!(refusal(&wordy).to_string().contains("5000000 letters"));
    let mut crowded = design(CardPaper::A6);
    crowded.dials = vec![Dial::default(); 13];
    assert!(refusal(&crowded).to_string().contains("13 dials"));
}

#[test]
fn a_lid_without_dials_still_has_a_card() {
    let mut design = design(CardPaper::A6);
    design.dials.clear();
    assert_eq!(read(&pdf(&design)).get_pages().len(), 1);
}

#[test]
fn the_picture_is_the_page() {
    let pages = card_pages(
        &design(CardPaper::A6),
        &Fonts::bundled(),
        &PaperOptions::default(),
        4.0,
    )
    .unwrap();
    let [page] = pages.as_slice() else {
        panic!("{} pages", pages.len())
    };
    assert_eq!((page.width, page.height), (420, 592));
    assert_eq!(page.rgba.len(), page.width * page.height * 4);
    let ink = page
        .rgba
        .chunks_exact(4)
        .filter(|pixel| pixel[0] < 128)
        .count();
    assert!(ink > 1000, "only {ink} dark pixels");
}

#[test]
fn another_renderer_draws_the_same_page() {
    for (paper, _) in PAPERS {
        let design = design(paper);
        let theirs = Pdf::new(pdf(&design)).unwrap();
        let settings = (InterpreterSettings::default(), RenderSettings::default());
        let theirs = render_pdf(&theirs, 2.0, settings.0, &settings.1, None).unwrap();
        let ours = card_pages(
            &design,
            &Fonts::bundled(),
            &PaperOptions::default(),
            144.0 / 25.4,
        )
        .unwrap();
        assert_eq!((theirs.len(), ours.len()), (1, 1));
        let (width, height) = (
            usize::from(theirs[0].width()),
            usize::from(theirs[0].height()),
        );
        assert!(width.abs_diff(ours[0].width) <= 1 && height.abs_diff(ours[0].height) <= 1);
        let is_dark = |pixel: &[u8]| pixel[1] < 200;
        let theirs_dark = theirs[0]
            .data()
            .iter()
            .filter(|pixel| is_dark(&[pixel.r, pixel.g]))
            .count();
        let ours_dark = ours[0]
            .rgba
            .chunks_exact(4)
            .filter(|pixel| is_dark(pixel))
            .count();
        let apart = theirs_dark.abs_diff(ours_dark) as f64 / ours_dark as f64;
        assert!(
            apart < 0.1,
            "{paper:?}: {theirs_dark} and {ours_dark} dark pixels"
        );
    }
}

#[test]
fn the_border_stays_clear() {
    for (paper, _) in PAPERS {
        let scale = 4.0;
        // 7.5 mm of A6 and 10 mm of the larger sheets, in pixels.
        let border = if paper == CardPaper::A6 { 30 } else { 40 };
        let pages = card_pages(
            &design(paper),
            &Fonts::bundled(),
            &PaperOptions::default(),
            scale,
        )
        .unwrap();
        for page in pages {
            let inside = |x: usize, y: usize| {
                (border..page.width - border).contains(&x)
                    && (border..page.height - border).contains(&y)
            };
            let fold = |x: usize| paper == CardPaper::FoldedA4 && x.abs_diff(page.width / 2) <= 2;
            for (index, pixel) in page.rgba.chunks_exact(4).enumerate() {
                let (x, y) = (index % page.width, index / page.width);
                assert!(
                    inside(x, y) || fold(x) || pixel[..3] == [255; 3],
                    "{paper:?}: ink at {x}, {y}"
                );
            }
        }
    }
}
