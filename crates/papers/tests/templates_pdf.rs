//! The template pages as a foreign reader finds them: rendered at 300 dpi and measured.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use hayro::hayro_interpret::InterpreterSettings;
use hayro::hayro_syntax::Pdf;
use hayro::{RenderSettings, render_pdf};
use latchwright_geometry::Point;
use latchwright_model::{Design, Dial, Labels, Paper, Units};
use latchwright_papers::{Fonts, PaperError, TemplateOptions, template_pdf, template_sheets};
use latchwright_workshop::ruler::{Correction, Measured};
use latchwright_workshop::{Feature, templates};
use lopdf::Document;

/// Pixels to the millimetre at 300 dpi.
const SCALE: f64 = 300.0 / 25.4;

fn pixels(mm: f64) -> usize {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "places on a sheet of paper, and none below nought"
    )]
    let pixels = (mm * SCALE).round().max(0.0) as usize;
    pixels
}

fn options() -> TemplateOptions {
    TemplateOptions::default()
}

fn pdf(design: &Design, options: &TemplateOptions) -> Vec<u8> {
    template_pdf(design, &Fonts::bundled(), options).unwrap()
}

fn refusal(design: &Design, options: &TemplateOptions) -> PaperError {
    let sheets = template_sheets(design, &Fonts::bundled(), options);
    sheets.map(|sheets| sheets.count()).unwrap_err()
}

/// A plate of 300 × 200 with dials 250 mm apart and one that is not in the middle.
fn wide(paper: Paper) -> Design {
    let mut design = Design::default();
    design.bench.paper = paper;
    design.plate.width = 300.0;
    design.plate.depth = 200.0;
    let dial = |x: f64| Dial {
        centre: (x, 95.0),
        ..Dial::default()
    };
    design.dials = [-125.0, 40.0, 125.0].map(dial).to_vec();
    design
}

/// How dark each pixel of a page is, 0 to 1.
struct Page {
    width: usize,
    height: usize,
    dark: Vec<f64>,
}

fn rendered(pdf: &[u8]) -> Vec<Page> {
    let pdf = Pdf::new(pdf.to_vec()).unwrap();
    let settings = RenderSettings::default();
    let pages = render_pdf(
        &pdf,
        300.0 / 72.0,
        InterpreterSettings::default(),
        &settings,
        None,
    );
    let page = |page: &hayro::vello_cpu::Pixmap| Page {
        width: usize::from(page.width()),
        height: usize::from(page.height()),
        dark: page
            .data()
            .iter()
            .map(|pixel| (f64::from(pixel.a) - f64::from(pixel.g)) / 255.0)
            .collect(),
    };
    pages.unwrap().iter().map(page).collect()
}

impl Page {
    fn at(&self, x: usize, y: usize) -> f64 {
        self.dark[y * self.width + x]
    }

    fn height_mm(&self) -> f64 {
        self.height as f64 / SCALE
    }

    /// Centre of what is dark in a window about (x, y), mm from the upper left.
    fn middle(&self, (x, y): (f64, f64), (half_x, half_y): (f64, f64)) -> (f64, f64) {
        let range = |middle: f64, half: f64| pixels(middle - half)..pixels(middle + half);
        let (mut sum, mut at) = (0.0, (0.0, 0.0));
        for row in range(y, half_y) {
            for column in range(x, half_x) {
                let dark = self.at(column, row);
                sum += dark;
                at.0 += dark * (column as f64 + 0.5);
                at.1 += dark * (row as f64 + 0.5);
            }
        }
        assert!(sum > 3.0, "no ink about ({x}, {y})");
        (at.0 / sum / SCALE, at.1 / sum / SCALE)
    }

    /// Lengths of both lines between their ticks, and of x to 4 in, mm; drawn `by` times as large.
    fn lines(&self, by: (f64, f64)) -> [f64; 4] {
        let zero = (10.0 + 3.0 * by.0, self.height_mm() - 10.0 - 4.0 * by.1);
        let column = |along: f64, side: f64| {
            let at = (zero.0 + along * by.0, zero.1 + side * by.1);
            self.middle(at, (0.5, 0.8)).0
        };
        let row = |along: f64, side: f64| {
            let at = (zero.0 + side * by.0, zero.1 - along * by.1);
            self.middle(at, (0.5, 0.4)).1
        };
        let (left, low) = (column(0.0, 1.8), row(0.0, 1.6));
        [
            column(100.0, -1.8) - left,
            column(101.6, 1.8) - left,
            low - row(100.0, 1.6),
            low - row(101.6, -1.6),
        ]
    }

    /// Upper and lower row of unbroken lines of at least `long` mm, and the column where the upper
    /// one begins; mm.
    fn frame(&self, long: f64) -> (f64, f64, f64) {
        let mut found: Vec<(usize, usize)> = Vec::new();
        for row in 0..self.height {
            let mut run = 0;
            for column in 0..self.width {
                run = if self.at(column, row) > 0.1 {
                    run + 1
                } else {
                    0
                };
                if run as f64 >= long * SCALE {
                    found.push((row, column + 1 - run));
                    break;
                }
            }
        }
        let (first, last) = (found.first().unwrap(), found.last().unwrap());
        let mm = |pixel: usize| pixel as f64 / SCALE;
        (mm(first.0), mm(last.0), mm(first.1))
    }

    /// Where the crosshair near (x, y) meets, mm.
    fn crosshair(&self, x: f64, y: f64) -> (f64, f64) {
        let upright = self.middle((x, y + 2.0), (0.8, 0.8)).0;
        (upright, self.middle((x + 2.0, y), (0.8, 0.8)).1)
    }
}

#[test]
fn a_line_of_100_mm_measures_100_mm_on_every_page() {
    for paper in [Paper::A4OrLetter, Paper::A3] {
        let mut design = Design::default();
        design.bench.paper = paper;
        for page in rendered(&pdf(&design, &options())) {
            let found = page.lines((1.0, 1.0));
            for (is, wanted) in found.iter().zip([100.0, 101.6, 100.0, 101.6]) {
                assert!((is - wanted).abs() < 0.05, "{paper:?}: {found:?}");
            }
        }
    }
}

#[test]
fn a_print_that_measured_97_98_is_drawn_102_06_long() {
    let measured = Measured {
        nominal: (100.0, 100.0),
        x: 97.98,
        y: 100.0,
        diagonals: None,
    };
    let measured = Some(measured.correction().unwrap());
    let corrected = TemplateOptions {
        measured,
        ..options()
    };
    let bytes = pdf(&Design::default(), &corrected);
    for page in rendered(&bytes) {
        let found = page.lines((100.0 / 97.98, 1.0));
        // A worked example: a factor of 1.0206.
        assert!((found[0] - 102.06).abs() < 0.05, "{found:?}");
        assert!((found[2] - 100.0).abs() < 0.05, "{found:?}");
    }
    let said = words(&bytes);
    assert!(said.contains("x×1.0206"), "{said}");
    assert!(said.contains("mmoff"), "{said}");
}

#[test]
fn a_leaning_printer_is_leant_against() {
    let correction = Correction {
        x: 1.0,
        y: 1.0,
        skew_deg: 2.0,
    };
    let leant = TemplateOptions {
        measured: Some(correction),
        ..options()
    };
    let pages = rendered(&pdf(&Design::default(), &leant));
    let page = &pages[0];
    // Where the correction puts the upper end of a line of 50 mm along y, seen from its lower end.
    let top = correction.corrected(Point::new(0.0, 50.0));
    // The whole page leans about its upper left corner: what stands lower is further to the right.
    let down = |y: f64| 13.0 - (y - 10.0) * top.x / top.y;
    let foot = page.height_mm() - 14.0;
    let low = page.middle((down(foot - 20.0), foot - 20.0), (2.5, 0.5));
    let high = page.middle((down(foot - 70.0), foot - 70.0), (2.5, 0.5));
    assert!(top.x < -1.5);
    let lean = (high.0 - low.0) / (low.1 - high.1);
    assert!((lean - top.x / top.y).abs() < 0.002, "{lean}");
}

#[test]
fn hole_centres_stand_where_they_should_over_250_mm() {
    for mirrored in [false, true] {
        let design = wide(Paper::A3);
        let wanted = TemplateOptions {
            mirrored,
            ..options()
        };
        let pages = rendered(&pdf(&design, &wanted));
        let (top, bottom, left) = pages[0].frame(290.0);
        assert!((bottom - top - 200.0).abs() < 0.3, "{}", bottom - top);
        let edge = pages[0].middle((left + 0.05, top + 30.0), (0.6, 3.0)).0;
        let foot = pages[0].middle((left + 60.0, bottom), (3.0, 0.6)).1;
        let template = &templates(&design).all[0];
        let template = if mirrored {
            template.mirrored()
        } else {
            template.clone()
        };
        let bores = template
            .centres
            .iter()
            .filter(|(centre, _)| matches!(centre.feature(), Feature::Bore(_)));
        let mut seen = Vec::new();
        for (centre, at) in bores {
            let (x, y) = pages[0].crosshair(edge + at.x, foot - at.y);
            assert!(
                (x - edge - at.x).abs() < 0.05,
                "{centre:?}: {x} {edge} {at:?}"
            );
            assert!(
                (foot - y - at.y).abs() < 0.05,
                "{centre:?}: {y} {foot} {at:?}"
            );
            seen.push(x);
        }
        let apart = (seen[2] - seen[0]).abs();
        assert!((apart - 250.0).abs() < 0.05, "{apart}");
        assert_eq!(seen[0] > seen[2], mirrored);
    }
}

#[test]
fn nothing_stands_within_10_mm_of_an_edge() {
    let leant = Correction {
        x: 1.03,
        y: 0.97,
        skew_deg: -1.5,
    };
    for measured in [None, Some(leant)] {
        let wanted = TemplateOptions {
            measured,
            ..options()
        };
        for page in rendered(&pdf(&wide(Paper::A4OrLetter), &wanted)) {
            let border = pixels(9.85);
            for y in 0..page.height {
                for x in 0..page.width {
                    let inside = (border..page.width - border).contains(&x)
                        && (border..page.height - border).contains(&y);
                    assert!(inside || page.at(x, y) < 0.02, "ink at {x}, {y}");
                }
            }
        }
    }
}

fn words(pdf: &[u8]) -> String {
    let document = Document::load_mem(pdf).unwrap();
    let pages: Vec<u32> = document.get_pages().keys().copied().collect();
    let text = document.extract_text(&pages).unwrap();
    text.split_whitespace().collect()
}

#[test]
fn pages_are_of_the_papers_size_and_printers_are_asked_not_to_scale() {
    let bytes = pdf(&wide(Paper::A4OrLetter), &options());
    let document = Document::load_mem(&bytes).unwrap();
    let sizes = [[210.0, 279.4], [279.4, 210.0]];
    for id in document.get_pages().values() {
        let page = document.get_dictionary(*id).unwrap();
        let sheet = page.get(b"MediaBox").unwrap().as_array().unwrap();
        let corner: Vec<f64> = sheet
            .iter()
            .map(|side| f64::from(side.as_float().unwrap()) / 72.0 * 25.4)
            .collect();
        let is = |size: &[f64; 2]| {
            (corner[2] - size[0]).abs() < 0.002 && (corner[3] - size[1]).abs() < 0.002
        };
        assert!(sizes.iter().any(is), "{corner:?}");
    }
    let catalog = document.catalog().unwrap();
    let asked = catalog
        .get(b"ViewerPreferences")
        .unwrap()
        .as_dict()
        .unwrap();
    assert_eq!(
        asked.get(b"PrintScaling").unwrap().as_name().unwrap(),
        b"None"
    );
    assert!(catalog.has(b"StructTreeRoot"));
}

#[test]
fn tiles_name_their_neighbours_and_their_joining_marks() {
    let said = words(&pdf(&wide(Paper::A4OrLetter), &options()));
    for part in [
        "TileA1:row1of1,column1of2;A2ontheright.",
        "A1ontheleft",
        "Printat100%,nofittingtothepage",
        "Platefromoutside",
        // all three shared a sheet before keeper and side took more words beside them
        "Ringsofdials1and2",
        "ringofdial3",
        "141.4mm",
    ] {
        assert!(
            said.to_lowercase().contains(&part.to_lowercase()),
            "{part} is not in {said}"
        );
    }
    assert_eq!(said.matches("A1–A2a").count() % 2, 0, "{said}");
    assert!(said.contains("A1–A2a"), "{said}");
}

#[test]
fn the_same_design_gives_the_same_bytes() {
    let design = Design::default();
    assert_eq!(pdf(&design, &options()), pdf(&design, &options()));
}

#[test]
fn what_cannot_be_printed_is_refused_in_a_sentence() {
    let mut design = Design::default();
    design.plate.width = 3000.0;
    design.plate.depth = 1500.0;
    let said = refusal(&design, &options()).to_string();
    assert!(said.contains("plate from outside: 3"), "{said}");
    assert!(said.contains("more than 20"), "{said}");
    design.plate.width = f64::NAN;
    let said = refusal(&design, &options()).to_string();
    assert!(said.contains("the plate has no template"), "{said}");
    let mut design = Design::default();
    design.dials[0].labels = Labels::Words(vec!["ꯍ".to_owned(); 8]);
    let said = refusal(&design, &options()).to_string();
    assert!(said.contains("“ꯍ” (U+ABCD)"), "{said}");
    design.dials = vec![Dial::default(); 13];
    assert!(
        refusal(&design, &options())
            .to_string()
            .contains("13 dials")
    );
    for x in [2.0, f64::NAN, 0.1] {
        let wanted = TemplateOptions {
            measured: Some(Correction {
                x,
                ..Correction::NONE
            }),
            ..options()
        };
        let said = refusal(&Design::default(), &wanted).to_string();
        assert!(said.contains("more than any printer needs"), "{said}");
    }
}

#[test]
fn an_inch_makers_templates_say_how_far_a_print_is_off_in_inches() {
    let mut design = Design {
        units: Units::Inch,
        ..Design::default()
    };
    design.bench.bits = vec![4.0];
    let corrected = TemplateOptions {
        measured: Some(Correction {
            x: 1.02,
            ..Correction::NONE
        }),
        ..options()
    };
    let said = words(&pdf(&design, &corrected));
    for part in [
        "5.568in.",
        "inoff,seenfromthelowerleftcorner",
        "askedfor;nobit",
    ] {
        assert!(said.contains(part), "{part} is not in {said}");
    }
    // 100 mm stands beside the measured line, whose other tick is at 4 in
    assert_eq!(said.replace("100mm", "").matches("mm").count(), 0, "{said}");
    design.plate.width = 9000.0;
    let said = refusal(&design, &options()).to_string();
    assert!(
        said.contains("354.409 × 5.591 in would take") && !said.contains("mm"),
        "{said}"
    );
    design.plate.width = f64::NAN;
    let said = refusal(&design, &options()).to_string();
    assert!(said.contains("from 0.00004 in to 393 in"), "{said}");
}

#[test]
fn a_hole_without_a_near_bit_is_told_on_the_page_that_shows_it() {
    let mut design = Design::default();
    design.bench.bits = vec![4.0, 8.5, 14.3];
    let document = Document::load_mem(&pdf(&design, &options())).unwrap();
    let pages: Vec<u32> = document.get_pages().keys().copied().collect();
    let mut told = Vec::new();
    for page in pages {
        let text = document.extract_text(&[page]).unwrap();
        let text: String = text.split_whitespace().collect();
        if text.contains("Keeperscrew:3mmasked") {
            told.push(text.contains("keeperscrewleft"));
        }
    }
    assert_eq!(told, [true]);
}
