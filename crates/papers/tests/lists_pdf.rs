//! Cut list, order of work and setting as a foreign reader finds them: true size, every figure, no panic.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use latchwright_drawing::disc_from_back;
use latchwright_drawing::{Ink, Shape};
use latchwright_geometry::{Point, trig};
use latchwright_model::Pose;
use latchwright_model::{Board, Corner, Design, Dial, Labels, LidKind, Paper, Units};
use latchwright_papers::{
    Date, Fonts, PaperError, PaperOptions, SettingText, Sheets, cut_list_sheets, setting_sheets,
    work_sheets,
};
use latchwright_proof::slide;
use lopdf::Document;

type Make = fn(&Design, &Fonts, &PaperOptions) -> Result<Sheets, PaperError>;

const ALL: [(&str, Make); 3] = [
    ("cut list", cut_list_sheets),
    ("order of work", work_sheets),
    ("setting", setting_sheets),
];

fn make(paper: Make, design: &Design) -> Result<Sheets, PaperError> {
    paper(design, &Fonts::bundled(), &PaperOptions::default())
}

fn pdf(paper: Make, design: &Design) -> Vec<u8> {
    make(paper, design).unwrap().pdf().unwrap()
}

fn inches() -> Design {
    let mut design = Design {
        units: Units::Inch,
        ..Design::default()
    };
    design.body.corner = Corner::Rabbeted;
    design.body.lid = LidKind::Band { height: 40.0 };
    design.bench.paper = Paper::Letter;
    design
}

/// The words of each page, blanks dropped, since a reader puts them where it likes.
fn pages(pdf: &[u8]) -> Vec<String> {
    let document = Document::load_mem(pdf).unwrap();
    let numbers: Vec<u32> = document.get_pages().keys().copied().collect();
    let text = |number| document.extract_text(&[number]).unwrap();
    let tight = |text: String| text.split_whitespace().collect();
    numbers.into_iter().map(text).map(tight).collect()
}

#[test]
fn the_cut_list_tells_sizes_grooves_and_every_hole_from_its_edges() {
    let words = pages(&pdf(cut_list_sheets, &Design::default())).concat();
    // Plate 220 × 140 × 12, dial 1 at (−55, 106): 110 − 55 = 55 from the left edge, 106 from the front.
    // The guide's left front pilot, underside up: 110 + 25.1 from the left, 22 from the front, 25.4 less bridge and strip.
    for part in [
        "220×140×12mm",
        "dial1bore55mm106mm14.3mmthrough",
        "dial3bore165mm106mm",
        "fingerknobslot",
        "Longpoint",
        "keeperscrewleft",
        "Plate,undersideup",
        "guidescrewfrontleft135.1mm22mm1.98mm8.9mmdeep",
        "219.8×139.8×11.8mm",
        "No.4×19mm(3/4in)",
        "cutoffeachendfirst",
        "butthinge",
    ] {
        let found = words.to_lowercase().contains(&part.to_lowercase());
        assert!(found, "{part:?} is not in {words}");
    }
}

#[test]
fn inch_makers_get_fractions_and_the_lid_that_is_cut_off() {
    let words = pages(&pdf(cut_list_sheets, &inches())).concat();
    // 220 mm are 8.661 in: 8 21/32 to the nearest thirty-second.
    for part in ["821/32", "thelidkeeps", "rabbetinside", "thesawtakes"] {
        assert!(words.contains(part), "{part:?} is not in {words}");
    }
}

#[test]
fn the_order_of_work_has_every_step_and_comes_after_manual_and_rules() {
    for design in [Design::default(), inches()] {
        let words = pages(&pdf(work_sheets, &design)).concat();
        for step in latchwright_workshop::steps::steps(&design) {
            let tight = |text: &str| text.split_whitespace().collect::<String>();
            let title = format!("{}{}", step.number, tight(step.title));
            assert!(words.contains(&title), "{title} is not in {words}");
            for caution in &step.cautions {
                assert!(words.contains(&tight(caution)), "{caution}");
            }
        }
        assert!(words.contains("manualofeachtool") && words.contains("notvaluables"));
    }
}

#[test]
fn a_disc_put_on_as_the_sheet_says_opens_at_its_label() {
    for positions in [4, 8, 12, 24] {
        for digit in 0..positions {
            let mut design = Design::default();
            for dial in &mut design.dials {
                dial.positions = positions;
            }
            design.combination = vec![digit, (digit + 1) % positions, positions - 1 - digit];
            let text = SettingText::of(&design);
            for (seat, dial) in text.dials.iter().zip(&design.dials) {
                // On paper: from the front clockwise, pointer at the hinge.
                let angle = trig::radians(f64::from(seat.clockwise) * dial.step_deg());
                let drawn = Point::new(-trig::sin(angle), -trig::cos(angle));
                let dots = disc_from_back(dial, seat.clockwise).items.into_iter();
                let dot = dots
                    .filter(|item| item.fill == Some(Ink::Movable))
                    .find_map(|item| match item.shape {
                        Shape::Circle { centre, .. } => Some(centre),
                        _ => None,
                    })
                    .unwrap();
                assert!(
                    drawn.cross(dot).abs() < 1e-6 && drawn.dot(dot) > 0.0,
                    "the drawing agrees"
                );
                // Seen from outside, left is right; then the knob goes clockwise to the label.
                let outside = Point::new(-dot.x, dot.y);
                let mark = (0..positions)
                    .find(|mark| dial.label(*mark) == seat.label)
                    .unwrap();
                let turn = trig::radians(f64::from(mark) * dial.step_deg());
                let (sin, cos) = (trig::sin(turn), trig::cos(turn));
                let turned = Point::new(
                    outside.x * cos + outside.y * sin,
                    outside.y * cos - outside.x * sin,
                );
                assert!(
                    turned.x.abs() < 1e-6 && turned.y < 0.0,
                    "{positions}, {digit}: {turned:?}"
                );
            }
            // And the model opens at those labels.
            let marks: Vec<u32> = text.dials.iter().map(|seat| seat.clockwise).collect();
            let pose = Pose::at_marks(&design, &marks);
            assert!(slide(&design, &pose.turns_deg).travel >= design.slider.travel);
        }
    }
}

#[test]
fn the_setting_is_one_page_unless_dials_are_many_and_warns_that_it_tells_the_combination() {
    let mut many = Design::default();
    let names: Vec<String> = (1..=12).map(|number| format!("evening {number}")).collect();
    let wordy = Dial {
        positions: 12,
        labels: Labels::Words(names),
        ..Dial::default()
    };
    many.dials = vec![wordy; 12];
    many.combination = (0..12).collect();
    for (design, most) in [(Design::default(), 1), (inches(), 1), (many, 2)] {
        let pages = pages(&pdf(setting_sheets, &design));
        assert!(pages.len() <= most, "{}", pages.len());
        assert!(
            pages[0].contains("Thissheettellsthecombination"),
            "{pages:?}"
        );
        assert!(pages[0].contains("Dial3"), "{pages:?}");
    }
}

#[test]
fn the_setting_says_how_to_get_in_what_is_proven_and_the_designs_numbers() {
    let words = pages(&pdf(setting_sheets, &Design::default())).concat();
    // Three dials of eight marks: 8 + 8 + 8 tries by feel, 8 · 8 · 8 settings.
    for part in [
        "atmost24tries,not512",
        "Of512settings1issuretoopenand511aresuretolock.",
        "Proven:",
        "traveloftheslider11mm",
        "Checkwiththelidstillopen",
        "turnonedialbyonemarkeitherway",
    ] {
        assert!(words.contains(part), "{part:?} is not in {words}");
    }
    let mut unproven = Design::default();
    unproven.workmanship.pin_place = 3.0;
    let text = SettingText::of(&unproven);
    assert!(text.proof.iter().all(|line| !line.starts_with("Proven")));
}

#[test]
fn sums_that_rounding_puts_out_stand_on_the_cut_list() {
    // Worked by hand: three of 37 mm are 1 15/32 each, together 4 13/32; the whole is 4 3/8.
    let mut design = inches();
    (design.body.thickness, design.inside.width) = (37.0, 37.0);
    let words = pages(&pdf(cut_list_sheets, &design)).concat();
    let said = "Widthoutside(side+room+side):theroundedpartsmake413/32in,thewholeis43/8in(+1/32in)";
    assert!(words.contains(said), "{words}");
    design.units = Units::Millimetre;
    let words = pages(&pdf(cut_list_sheets, &design)).concat();
    assert!(!words.contains("theroundedpartsmake"), "{words}");
}

#[test]
fn a_board_that_is_too_short_is_told_as_a_length() {
    let mut design = Design::default();
    let board = |length: f64, count: u32| Board {
        wood: design.body.wood.clone(),
        length,
        width: 150.0,
        thickness: 11.8,
        count,
    };
    // One board of 500 takes the plate and the front; left, right and back side are still to come:
    // 142.8 + 142.8 + 222.8, two cuts of 3.2 and both ends' trim of 15.
    let (short, long) = (board(500.0, 1), board(2400.0, 2));
    design.bench.boards = vec![short];
    let words = pages(&pdf(cut_list_sheets, &design)).concat();
    let said = "545mmofwhiteoak11.8mmthickand150mmwidearemissing,for:leftside,rightside,back.";
    assert!(words.contains(said), "{words}");
    assert!(words.contains("Shortofwood"), "{words}");
    design.bench.boards = vec![long];
    let words = pages(&pdf(cut_list_sheets, &design)).concat();
    assert!(
        !words.contains("mmofwhiteoak11.8mmthickand150mmwidearemissing"),
        "{words}"
    );
}

#[test]
fn other_papers_never_tell_the_combination() {
    let other = Design {
        combination: vec![0, 2, 7],
        ..Design::default()
    };
    for paper in [cut_list_sheets as Make, work_sheets] {
        assert_eq!(pdf(paper, &Design::default()), pdf(paper, &other));
    }
    assert_ne!(
        pdf(setting_sheets, &Design::default()),
        pdf(setting_sheets, &other)
    );
}

#[test]
fn every_sheet_has_its_true_size_is_tagged_and_asks_not_to_be_scaled() {
    let sizes = [
        (Paper::A4OrLetter, [210.0, 279.4]),
        (Paper::A4, [210.0, 297.0]),
        (Paper::A3, [297.0, 420.0]),
        (Paper::Letter, [215.9, 279.4]),
        (Paper::Legal, [215.9, 355.6]),
        (Paper::Tabloid, [279.4, 431.8]),
    ];
    for (paper, [width, height]) in sizes {
        let mut design = Design::default();
        design.bench.paper = paper;
        for (name, kind) in ALL {
            let document = Document::load_mem(&pdf(kind, &design)).unwrap();
            let catalog = document.catalog().unwrap();
            assert!(catalog.has(b"StructTreeRoot"));
            let tags = catalog.get(b"MarkInfo").unwrap().as_dict().unwrap();
            assert!(tags.get(b"Marked").unwrap().as_bool().unwrap() && !tags.has(b"Suspects"));
            let wishes = catalog
                .get(b"ViewerPreferences")
                .unwrap()
                .as_dict()
                .unwrap();
            assert_eq!(
                wishes.get(b"PrintScaling").unwrap().as_name().unwrap(),
                b"None"
            );
            for page in document.get_pages().values() {
                let page = document.get_dictionary(*page).unwrap();
                let corners = page.get(b"MediaBox").unwrap().as_array().unwrap();
                let found =
                    |index: usize| f64::from(corners[index].as_float().unwrap()) * 25.4 / 72.0;
                let off = (found(2) - width).abs().max((found(3) - height).abs());
                assert!(off < 0.002, "{name} on {paper:?} is off by {off} mm");
            }
        }
    }
}

#[test]
fn the_same_design_gives_the_same_bytes() {
    for (name, paper) in ALL {
        for design in [Design::default(), inches()] {
            assert_eq!(pdf(paper, &design), pdf(paper, &design), "{name}");
        }
    }
}

/// The lowest row with ink above the footer.
fn used(rows: &[usize], height: usize) -> usize {
    let above = rows.iter().copied().filter(|row| *row < height - 38);
    above.max().unwrap()
}

#[test]
fn no_page_is_nearly_empty_and_none_has_ink_near_its_edge() {
    let mut fine = inches();
    fine.bench.fraction = 16;
    let mut six = Design::default();
    six.plate.width = 360.0;
    six.dials = vec![Dial::default(); 6];
    for (name, paper) in ALL {
        for design in [&Design::default(), &inches(), &fine, &six] {
            let pictures = make(paper, design).unwrap().pictures(2.0);
            for (number, page) in pictures.iter().enumerate() {
                let dark = |x: usize, y: usize| page.rgba[(y * page.width + x) * 4 + 1] < 200;
                let inked = |y: &usize| (0..page.width).any(|x| dark(x, *y));
                let rows: Vec<usize> = (0..page.height).filter(inked).collect();
                let border = 20;
                let (top, bottom) = (rows[0], rows[rows.len() - 1]);
                assert!(
                    top >= border && bottom < page.height - border,
                    "{name}, {number}: {top}, {bottom}"
                );
                let mut columns = (0..border).chain(page.width - border..page.width);
                assert!(
                    columns.all(|x| (0..page.height).all(|y| !dark(x, y))),
                    "{name}, {number}"
                );
                // Eight lines of 9 pt are some 25 mm of rows with ink and gaps.
                assert!(
                    used(&rows, page.height) - top > 100,
                    "{name}: page {}",
                    number + 1
                );
            }
        }
    }
}

#[test]
fn names_in_other_scripts_are_drawn_and_letters_without_a_font_are_named() {
    for (name, paper) in ALL {
        let mut design = Design {
            title: "花子の箱 \"#pagebreak()\" مريم".into(),
            ..Design::default()
        };
        design.body.wood = "дуб".into();
        assert!(make(paper, &design).unwrap().pdf().is_ok(), "{name}");
        design.title = "Ma\u{13000}".into();
        let err = make(paper, &design)
            .map(|sheets| sheets.count())
            .unwrap_err()
            .to_string();
        assert!(err.contains("U+13000"), "{name}: {err}");
    }
}

#[test]
fn nonsense_gets_a_page_or_a_sentence() {
    let mut designs = vec![Design::default(); 9];
    for (design, value) in designs
        .iter_mut()
        .zip([f64::NAN, f64::INFINITY, -1.0, 0.0, 1e300])
    {
        design.plate.width = value;
        design.body.thickness = value;
        design.inside.depth = value;
        design.bench.kerf = value;
        design.slider.travel = value;
        design.dials[1].centre.0 = value;
        design.dials[1].disc.radius = value;
        design.dials[2].bore.diameter = value;
    }
    designs[5].title = "x".repeat(100_000);
    designs[6].dials = vec![Dial::default(); 13];
    designs[7].combination = vec![900; 3];
    designs[8].dials.clear();
    for (number, design) in designs.iter().enumerate() {
        for (name, paper) in ALL {
            match make(paper, design) {
                Ok(sheets) => assert!(
                    sheets.count() > 0 && sheets.count() < 60,
                    "{name}, {number}"
                ),
                Err(err) => assert!(
                    !matches!(err, PaperError::Typeset { .. }),
                    "{name}, {number}: {err}"
                ),
            }
        }
    }
    let err = make(setting_sheets, &designs[7])
        .map(|sheets| sheets.count())
        .unwrap_err();
    assert!(
        err.to_string()
            .contains("dial 1 to mark 900, but its last mark is 7"),
        "{err}"
    );
    let err = make(work_sheets, &designs[6])
        .map(|sheets| sheets.count())
        .unwrap_err();
    assert!(err.to_string().contains("13 dials"), "{err}");
}

#[test]
fn a_day_that_does_not_exist_is_refused() {
    let date = Some(Date {
        year: 2030,
        month: 2,
        day: 30,
    });
    let options = PaperOptions { date };
    for (name, paper) in ALL {
        let sheets = paper(&Design::default(), &Fonts::bundled(), &options);
        assert!(
            matches!(
                sheets.map(|sheets| sheets.count()),
                Err(PaperError::Date { .. })
            ),
            "{name}"
        );
    }
}

#[test]
fn a_design_that_is_not_proven_says_so_on_cut_list_and_order_of_work() {
    let mut unproven = Design::default();
    unproven.workmanship.pin_place = 3.0;
    for paper in [cut_list_sheets as Make, work_sheets] {
        let said = |design: &Design| {
            pages(&pdf(paper, design))
                .concat()
                .contains("Thisdesignisnotproven")
        };
        assert!(said(&unproven));
        assert!(!said(&Design::default()));
    }
}
