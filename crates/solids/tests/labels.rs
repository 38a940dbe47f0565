//! Labels made from letters of fonts: any script, contours that overlap, counters; raised and sunk.

use latchwright_geometry::Point;
use latchwright_model::{Design, Labels};
use latchwright_solids::part::Kind;
use latchwright_solids::slice::section;
use latchwright_solids::{Fill, Options, Outline, Part, Region, Relief, Warning, parts};
use ttf_parser::{Face, OutlineBuilder};

const LATIN: &[u8] = include_bytes!("../../../assets/fonts/NotoSans-Bold.ttf");
const ARABIC: &[u8] = include_bytes!("../../../assets/fonts/NotoSansArabic-Regular.ttf");
const EAST: &[u8] = include_bytes!("../../../assets/fonts/NotoSansCJKjp-Regular.otf");
const DEVANAGARI: &[u8] = include_bytes!("../../../assets/fonts/NotoSansDevanagari-Regular.ttf");
const HEBREW: &[u8] = include_bytes!("../../../assets/fonts/NotoSansHebrew-Regular.ttf");

/// Contours of a letter cut into chords, as a caller would do it.
#[derive(Default)]
struct Chords {
    done: Vec<Outline>,
    points: Vec<Point>,
}

const STEPS: u32 = 24;

impl Chords {
    fn curve(&mut self, at: impl Fn(f64) -> Point) {
        for step in 1..=STEPS {
            self.points.push(at(f64::from(step) / f64::from(STEPS)));
        }
    }
}

fn point(x: f32, y: f32) -> Point {
    Point::new(f64::from(x), f64::from(y))
}

impl OutlineBuilder for Chords {
    fn move_to(&mut self, x: f32, y: f32) {
        self.points.push(point(x, y));
    }
    fn line_to(&mut self, x: f32, y: f32) {
        self.points.push(point(x, y));
    }
    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        let (a, b, c) = (
            self.points[self.points.len() - 1],
            point(x1, y1),
            point(x, y),
        );
        self.curve(|t| a * ((1.0 - t) * (1.0 - t)) + b * (2.0 * t * (1.0 - t)) + c * (t * t));
    }
    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        let a = self.points[self.points.len() - 1];
        let (b, c, d) = (point(x1, y1), point(x2, y2), point(x, y));
        self.curve(|t| {
            let s = 1.0 - t;
            a * (s * s * s) + b * (3.0 * s * s * t) + c * (3.0 * s * t * t) + d * (t * t * t)
        });
    }
    fn close(&mut self) {
        self.done
            .push(Outline::new(std::mem::take(&mut self.points)));
    }
}

fn letter(font: &[u8], letter: char) -> Region {
    let face = Face::parse(font, 0).expect("a font");
    let glyph = face.glyph_index(letter).expect("a letter of the font");
    let mut chords = Chords::default();
    face.outline_glyph(glyph, &mut chords).expect("an outline");
    Region::filled(&chords.done, Fill::NonZero).expect("a letter")
}

fn rings(labels: Vec<Region>, relief: Relief) -> (Part, Part) {
    let mut design = Design::default();
    design.dials.truncate(1);
    design.combination.truncate(1);
    let with = |labels: Vec<Vec<Region>>| Options {
        labels,
        relief,
        leave_out: vec![
            Kind::Jig,
            Kind::Gauge,
            Kind::Keeper,
            Kind::Washer,
            Kind::Disc,
        ],
        ..Options::default()
    };
    let ring = |design: &Design, options: &Options| {
        let parts = parts(design, options).unwrap_or_else(|faults| panic!("{faults:?}"));
        let found = parts.into_iter().find(|part| part.name == "Ring 1");
        found.expect("a ring")
    };
    let own = ring(&design, &with(vec![labels]));
    // the same ring without any label: marks only
    design.dials[0].labels = Labels::Words(vec!["…".to_owned(); 8]);
    (own, ring(&design, &with(Vec::new())))
}

/// Area of what is raised or sunk, less the marks, mm².
fn signs(own: &Part, bare: &Part, relief: Relief) -> f64 {
    let ground = own.colour_change.expect("a ground");
    let at = |part: &Part| section(&part.mesh, ground + 0.3).area();
    match relief {
        Relief::Raised => at(own) - at(bare),
        Relief::Sunk => at(bare) - at(own),
    }
}

#[test]
fn letters_of_any_script_are_raised_and_sunk_with_their_counters() {
    let of = |font: &[u8], letters: &str| letters.chars().map(|c| letter(font, c)).collect();
    let sets: [Vec<Region>; 5] = [
        of(LATIN, "B8@äOÅ&%"),
        of(ARABIC, "هوصطمقعظ"),
        of(EAST, "茶国日品画龍福回"),
        of(DEVANAGARI, "अबकखगघचछ"),
        of(HEBREW, "םסאבגדהש"),
    ];
    for letters in sets {
        let row =
            |pick: fn((Point, Point)) -> f64| letters.iter().filter_map(Region::bounds).map(pick);
        let low = row(|(low, _)| low.y).fold(f64::INFINITY, f64::min);
        let high = row(|(_, high)| high.y).fold(f64::NEG_INFINITY, f64::max);
        let scale = 4.5 / (high - low);
        let wanted: f64 = letters
            .iter()
            .map(|letter| letter.area() * scale * scale)
            .sum();
        for relief in [Relief::Raised, Relief::Sunk] {
            let (own, bare) = rings(letters.clone(), relief);
            assert!(
                !own.warnings
                    .iter()
                    .any(|warning| matches!(warning, Warning::BareMarks { .. })),
                "{:?}",
                own.warnings
            );
            let got = signs(&own, &bare, relief);
            assert!((got / wanted - 1.0).abs() < 0.02, "{got} against {wanted}");
        }
    }
}

#[test]
fn the_middle_of_an_o_stays_ground() {
    let letters = vec![letter(LATIN, 'O'); 8];
    let (own, _) = rings(letters, Relief::Raised);
    let cut = section(&own.mesh, own.colour_change.unwrap() + 0.3);
    // the first mark's label stands at +y: out from the middle there is stroke, counter, stroke
    let mut last = false;
    let mut changes = 0;
    for step in 0..3000 {
        let inside = cut.contains(Point::new(1e-4, f64::from(step) * 0.01));
        changes += usize::from(inside != last);
        last = inside;
    }
    // mark, lower stroke, upper stroke: in and out of each
    assert_eq!(changes, 6);
}

/// Strokes laid over one another, as letters of variable fonts are made; with a hole, a contour that
/// crosses itself, one that touches another in a point, and one twice.
#[test]
fn contours_that_overlap_touch_or_cross_themselves_give_a_closed_ring() {
    let block = |x: f64, y: f64, wide: f64, tall: f64| {
        Outline::rectangle(Point::new(x, y), Point::new(x + wide, y + tall))
    };
    let bow = Outline::new(vec![
        Point::new(0.0, 0.0),
        Point::new(400.0, 500.0),
        Point::new(400.0, 0.0),
        Point::new(0.0, 500.0),
    ]);
    let letters: Vec<Region> = [
        vec![
            block(0.0, 0.0, 200.0, 700.0),
            block(0.0, 0.0, 500.0, 150.0),
            block(0.0, 550.0, 500.0, 150.0),
        ],
        vec![
            block(0.0, 0.0, 600.0, 700.0),
            block(200.0, 200.0, 200.0, 300.0).reversed(),
        ],
        vec![bow.clone()],
        vec![
            block(0.0, 0.0, 300.0, 300.0),
            block(300.0, 300.0, 300.0, 300.0),
        ],
        vec![block(0.0, 0.0, 300.0, 700.0), block(0.0, 0.0, 300.0, 700.0)],
        vec![bow, block(100.0, -100.0, 200.0, 700.0).reversed()],
        vec![
            block(0.0, 0.0, 300.0, 300.0),
            block(300.0, 0.0, 300.0, 300.0),
        ],
        vec![
            block(0.0, 0.0, 600.0, 600.0),
            block(0.0, 100.0, 300.0, 300.0).reversed(),
        ],
    ]
    .into_iter()
    .map(|contours| Region::filled(&contours, Fill::NonZero).unwrap())
    .collect();
    assert!((letters[0].area() - (200.0 * 700.0 + 2.0 * 300.0 * 150.0)).abs() < 1e-6);
    assert!((letters[1].area() - (420_000.0 - 60_000.0)).abs() < 1e-6);
    let scale = 4.5 / 800.0;
    let wanted: f64 = letters
        .iter()
        .map(|letter| letter.area() * scale * scale)
        .sum();
    for relief in [Relief::Raised, Relief::Sunk] {
        let (own, bare) = rings(letters.clone(), relief);
        let got = signs(&own, &bare, relief);
        assert!((got / wanted - 1.0).abs() < 0.01, "{got} against {wanted}");
    }
}

#[test]
fn thin_strokes_are_warned_of() {
    let hair = Outline::rectangle(Point::default(), Point::new(30.0, 700.0));
    let (own, _) = rings(vec![hair.into(); 8], Relief::Raised);
    let thin = Warning::ThinLabels {
        labels: 8,
        nozzle: 0.4,
    };
    assert_eq!(own.warnings[..], [thin]);
    let (own, _) = rings(vec![letter(LATIN, 'B'); 8], Relief::Raised);
    assert!(own.warnings.is_empty(), "{:?}", own.warnings);
}
