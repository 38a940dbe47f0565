//! The card in every language and both styles: whole, tagged in its language, in that language's own
//! marks, and in pictures that say what the words say.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use latchwright_model::{CardPaper, CardStyle, Design, Dial, Labels, Language};
use latchwright_papers::{
    CardText, Fonts, PaperError, PaperOptions, card, card_pages, card_sheets,
};
use lopdf::{Document, decode_text_string};

const PAPERS: [CardPaper; 3] = [CardPaper::A6, CardPaper::A5, CardPaper::FoldedA4];

fn design(language: Language, style: CardStyle, paper: CardPaper) -> Design {
    let mut design = Design::default();
    design.card.language = language;
    design.card.style = style;
    design.card.paper = paper;
    design.card.recipient = "Zoë".into();
    design.card.greeting = "For a rainy day.".into();
    design.card.from = "Mira".into();
    design
}

fn every_card() -> Vec<Design> {
    let mut all = Vec::new();
    for language in Language::ALL {
        for style in CardStyle::ALL {
            all.extend(PAPERS.map(|paper| design(language, style, paper)));
        }
    }
    all
}

fn pdf(design: &Design) -> Vec<u8> {
    card(design, &Fonts::bundled(), &PaperOptions::default()).unwrap()
}

fn read(design: &Design) -> Document {
    Document::load_mem(&pdf(design)).unwrap()
}

/// The words of the only page without what only parts them.
fn words(design: &Design) -> String {
    plain(&read(design).extract_text(&[1]).unwrap())
}

fn plain(words: &str) -> String {
    let parts = |letter: &char| letter.is_whitespace() || *letter == '\u{200b}';
    words.chars().filter(|letter| !parts(letter)).collect()
}

/// What the file says in place of its pictures, in no order.
fn descriptions(design: &Design) -> Vec<String> {
    let document = read(design);
    let entries = document
        .objects
        .values()
        .filter_map(|one| one.as_dict().ok());
    entries
        .filter_map(|entry| decode_text_string(entry.get(b"Alt").ok()?).ok())
        .collect()
}

fn tag(language: Language) -> &'static str {
    match language {
        Language::English => "en",
        Language::German => "de",
        Language::French => "fr",
        Language::Spanish => "es",
        Language::Japanese => "ja",
    }
}

#[test]
fn every_card_is_one_page_in_its_language_and_the_same_each_time() {
    for design in every_card() {
        let card = &design.card;
        let document = read(&design);
        assert_eq!(document.get_pages().len(), 1, "{card:?}");
        let catalog = document.catalog().unwrap();
        let language = catalog.get(b"Lang").unwrap().as_str().unwrap();
        assert_eq!(language, tag(card.language).as_bytes());
        assert_eq!(pdf(&design), pdf(&design), "{card:?}");
    }
}

#[test]
fn every_sentence_stands_on_a_card_in_words() {
    for language in Language::ALL {
        for paper in PAPERS {
            let design = design(language, CardStyle::Words, paper);
            // Where a word is parted at the end of a line, a hyphen is read with it.
            let page = words(&design).replace(['-', '\u{ad}', '\u{2010}'], "");
            let text = CardText::of(&design);
            let steps = text.steps().map(|step| step.text.as_str());
            for sentence in steps.chain(text.stuck.iter().chain(&text.cautions).copied()) {
                assert!(page.contains(&plain(sentence)), "{sentence} in {page}");
            }
            for turn in text.steps().flat_map(|step| &step.turns) {
                assert!(
                    page.contains(&plain(&turn.sentence())),
                    "{turn:?} in {page}"
                );
            }
        }
    }
}

#[test]
fn a_card_in_pictures_has_words_for_grown_ups_only_and_describes_each_step() {
    for language in Language::ALL {
        for paper in PAPERS {
            let design = design(language, CardStyle::Pictures, paper);
            let (page, text) = (words(&design), CardText::of(&design));
            let described = descriptions(&design);
            for step in text.steps() {
                assert!(
                    !page.contains(&plain(&step.text)),
                    "{} in {page}",
                    step.text
                );
                let said = |alt: &&String| plain(alt).starts_with(&plain(&step.text));
                let alt = described.iter().find(said).expect(&step.text);
                for turn in &step.turns {
                    assert!(plain(alt).contains(&plain(&turn.sentence())), "{alt}");
                }
                assert!(!alt.contains('\u{200b}'), "{alt}");
            }
            let page = page.replace(['-', '\u{ad}', '\u{2010}'], "");
            for caution in &text.cautions {
                assert!(page.contains(&plain(caution)), "{caution} in {page}");
            }
        }
    }
}

#[test]
fn a_card_that_keeps_the_combination_keeps_it_in_every_language_and_style() {
    for mut one in every_card() {
        one.card.show_combination = false;
        let mut other = one.clone();
        other.combination = vec![0, 2, 7];
        assert_eq!(pdf(&one), pdf(&other), "{:?}", one.card);
    }
}

#[test]
fn one_dial_none_and_twelve_fit_in_every_language_and_style() {
    let mut refused = Vec::new();
    for base in every_card() {
        for count in [0_u8, 1, 12] {
            let mut design = base.clone();
            let dial = |index: u8| Dial {
                centre: (
                    f64::from(index % 6) * 46.0 - 115.0,
                    170.0 - 70.0 * f64::from(index / 6),
                ),
                positions: 12,
                labels: Labels::Pictures(latchwright_drawing::PICTURES.map(str::to_owned).to_vec()),
                ..Dial::default()
            };
            design.plate.width = 300.0;
            design.plate.depth = 220.0;
            design.dials = (0..count).map(dial).collect();
            design.combination = (0..u32::from(count)).collect();
            let made = card(&design, &Fonts::bundled(), &PaperOptions::default());
            refused.extend(made.err().map(|why| format!("{why}: {:?}", design.card)));
        }
    }
    assert!(refused.is_empty(), "{}", refused.join("\n"));
}

#[test]
fn the_border_of_every_card_stays_clear() {
    const SCALE: f64 = 3.0;
    for design in every_card() {
        // 7.5 mm of A6 and 10 mm of the larger sheets, in pixels; the folded sheet has marks at its
        // fold.
        let (border, fold) = match design.card.paper {
            CardPaper::A6 => (22, false),
            CardPaper::A5 => (30, false),
            CardPaper::FoldedA4 => (30, true),
        };
        let options = PaperOptions::default();
        let pages = card_pages(&design, &Fonts::bundled(), &options, SCALE).unwrap();
        let page = &pages[0];
        for (index, pixel) in page.rgba.chunks_exact(4).enumerate() {
            let (x, y) = (index % page.width, index / page.width);
            let inside = (border..page.width - border).contains(&x)
                && (border..page.height - border).contains(&y);
            let mark = fold && x.abs_diff(page.width / 2) <= 2;
            let clear = pixel[..3] == [255; 3];
            assert!(inside || mark || clear, "{:?}: {x}, {y}", design.card);
        }
    }
}

#[test]
fn sizes_that_are_no_sizes_give_a_card_or_a_sentence() {
    for style in CardStyle::ALL {
        for size in [f64::NAN, f64::INFINITY, -5.0, 0.0, 1e300] {
            let mut design = design(Language::French, style, CardPaper::A5);
            design.dials[0].knob.diameter = size;
            design.dials[1].bore.diameter = size;
            design.dials[2].pin.diameter = size;
            design.slider.shank = size;
            design.slider.guide_at = (size, size);
            let made = card(&design, &Fonts::bundled(), &PaperOptions::default());
            assert!(
                !matches!(made, Err(PaperError::Typeset { .. })),
                "{size}: {made:?}"
            );
        }
    }
}

#[test]
fn a_long_greeting_on_a_card_in_pictures_is_refused_with_figures() {
    let mut design = design(Language::German, CardStyle::Pictures, CardPaper::A6);
    design.card.greeting = "A box for your letters and for a rainy afternoon. ".repeat(40);
    let sheets = card_sheets(&design, &Fonts::bundled(), &PaperOptions::default());
    let Err(PaperError::TooLong { over_mm, lines, .. }) = sheets.map(|sheets| sheets.count())
    else {
        panic!("forty sentences fit on A6");
    };
    assert!((20..200).contains(&over_mm), "{over_mm}");
    assert!((5..80).contains(&lines), "{lines}");
}

/// All fixed words of cards with every number of dials, with and without the combination.
fn said(language: Language) -> String {
    let mut all = Vec::new();
    for dials in 0..4 {
        for shown in [true, false] {
            let mut design = design(language, CardStyle::Words, CardPaper::A6);
            design.title = "Box".into();
            design.dials.truncate(dials);
            design.card.show_combination = shown;
            let text = CardText::of(&design);
            all.extend([text.title.clone(), text.lid_described.clone()]);
            all.push(format!(
                "{}{}",
                text.cautions_heading,
                text.cautions.join("\n")
            ));
            all.extend(text.steps().map(|step| step.text.clone()));
            all.extend(text.stuck.iter().map(|line| (*line).to_owned()));
        }
    }
    all.join("\n")
}

#[test]
fn each_language_keeps_to_its_own_marks() {
    for language in Language::ALL {
        let said = said(language);
        assert!(!said.contains(['\'', '"']), "typewriter's marks: {said}");
        assert!(!said.contains("  "), "two blanks: {said}");
        for (place, _) in said.match_indices([':', ';', '!', '?']) {
            let before = said[..place].chars().next_back().unwrap();
            let spaced = matches!(before, '\u{a0}' | '\u{202f}');
            assert_eq!(spaced, language == Language::French, "{}", &said[..=place]);
        }
        if language == Language::Japanese {
            assert!(!said.contains([' ', ',', '.', ':']), "{said}");
        }
    }
}

#[test]
fn every_language_and_style_has_a_name_of_its_own_that_can_be_drawn() {
    let mut names: Vec<&str> = Language::ALL.map(Language::name).to_vec();
    names.extend(CardStyle::ALL.map(CardStyle::name));
    assert_eq!(
        Fonts::bundled().missing(&names.concat()),
        Vec::<char>::new()
    );
    names.sort_unstable();
    let count = names.len();
    names.dedup();
    assert_eq!(names.len(), count);
}
