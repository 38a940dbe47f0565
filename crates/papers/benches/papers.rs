//! How long all papers of a design take in a fresh process, fonts and all, and an edit to a fresh
//! picture of one page, each beside one bare page of the same sheet that is typeset by hand. The goals
//! are 1 s and 100 ms. Every run checks its answer.

use std::env;
use std::process::Command;
use std::sync::LazyLock;
use std::sync::atomic::{AtomicU32, Ordering};

use divan::{Bencher, black_box};
use latchwright_model::{Design, Dial};
use latchwright_papers::{
    Fonts, PaperError, PaperOptions, Sheets, TemplateOptions, card_sheets, cut_list_sheets,
    setting_sheets, template_sheets, work_sheets,
};
use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};
use typst_layout::PagedDocument;
use typst_pdf::PdfOptions;

/// As large as the window shows a page.
const PIXELS_PER_MM: f64 = 4.0;
/// First argument of a process that makes papers once and ends.
const COLD: &str = "cold";

type Make = fn(&Design, &Fonts) -> Result<Sheets, PaperError>;

const PAPERS: [(&str, Make); 5] = [
    ("card", |design, fonts| {
        card_sheets(design, fonts, &PaperOptions::default())
    }),
    ("templates", |design, fonts| {
        template_sheets(design, fonts, &TemplateOptions::default())
    }),
    ("cut list", |design, fonts| {
        cut_list_sheets(design, fonts, &PaperOptions::default())
    }),
    ("order of work", |design, fonts| {
        work_sheets(design, fonts, &PaperOptions::default())
    }),
    ("setting", |design, fonts| {
        setting_sheets(design, fonts, &PaperOptions::default())
    }),
];

fn main() {
    let mut arguments = env::args().skip(1);
    if arguments.next().as_deref() == Some(COLD) {
        let bytes = match arguments.next().as_deref() {
            Some("papers") => all_papers(&large()),
            _ => bare_page(0).pdf(),
        };
        assert!(bytes > 1000);
        return;
    }
    divan::main();
}

/// Four dials of twelve marks on a plate that takes tiles.
fn large() -> Design {
    let mut design = Design::default();
    design.plate.width = 300.0;
    design.inside.width = 276.0;
    let dial = |x: f64| Dial {
        centre: (x, 95.0),
        positions: 12,
        ..Dial::default()
    };
    design.dials = [-93.0, -31.0, 31.0, 93.0].map(dial).to_vec();
    design.combination = vec![3, 7, 0, 11];
    design
}

/// Every paper as PDF, the templates mirrored too; how many bytes.
fn all_papers(design: &Design) -> usize {
    let fonts = Fonts::bundled();
    let mirrored = TemplateOptions {
        mirrored: true,
        ..TemplateOptions::default()
    };
    let mirrored = template_sheets(design, &fonts, &mirrored);
    let papers = PAPERS.iter().map(|(_, make)| make(design, &fonts));
    papers
        .chain([mirrored])
        .map(|sheets| {
            sheets
                .and_then(|sheets| sheets.pdf())
                .expect("a paper")
                .len()
        })
        .sum()
}

/// One run of this program that makes `what` and ends.
fn fresh_process(what: &str) {
    let program = env::current_exe().expect("this program");
    let status = Command::new(program).args([COLD, what]).status();
    assert!(status.expect("a process").success());
}

#[divan::bench(sample_count = 10, sample_size = 1)]
fn all_papers_in_a_fresh_process(bencher: Bencher) {
    bencher.bench_local(|| fresh_process("papers"));
}

#[divan::bench(sample_count = 10, sample_size = 1)]
fn a_bare_page_in_a_fresh_process(bencher: Bencher) {
    bencher.bench_local(|| fresh_process("bare"));
}

#[divan::bench(args = ["card", "templates", "cut list", "order of work", "setting"], sample_count = 20, sample_size = 1)]
fn from_an_edit_to_a_picture(bencher: Bencher, paper: &str) {
    let (_, make) = PAPERS
        .iter()
        .find(|(name, _)| *name == paper)
        .expect("a paper");
    let fonts = Fonts::bundled();
    let mut design = large();
    bencher.bench_local(|| {
        // Each time another size, so that nothing of before can be shown again.
        design.plate.depth += 0.01;
        let sheets = make(black_box(&design), &fonts).expect("a paper");
        let page = sheets.picture(0, PIXELS_PER_MM).expect("a page");
        assert!(page.width > 400 && page.rgba.len() == page.width * page.height * 4);
        page
    });
}

#[divan::bench(sample_count = 20, sample_size = 1)]
fn from_an_edit_to_a_picture_of_a_bare_page(bencher: Bencher) {
    static EDIT: AtomicU32 = AtomicU32::new(1);
    bencher.bench_local(|| {
        let page = bare_page(EDIT.fetch_add(1, Ordering::Relaxed)).picture();
        assert!(page > 400 * 500);
        page
    });
}

/// One page with one line of words.
struct Bare(PagedDocument);

impl Bare {
    fn pdf(&self) -> usize {
        let pdf = typst_pdf::pdf(&self.0, &PdfOptions::default());
        pdf.expect("a file").len()
    }

    /// Pixels of its picture.
    fn picture(&self) -> usize {
        let options = typst_render::RenderOptions {
            pixel_per_pt: typst::utils::Scalar::new(PIXELS_PER_MM * 25.4 / 72.0),
            render_bleed: false,
        };
        let page = self.0.pages().first().expect("a page");
        typst_render::render(page, &options).pixels().len()
    }
}

fn bare_page(number: u32) -> Bare {
    let text = format!(
        "#set page(width: 210mm, height: 279.4mm)\n#set text(font: \"Noto Sans\")\nPage {number}"
    );
    let path = VirtualPath::new("main.typ").expect("a path");
    let id = RootedPath::new(VirtualRoot::Project, path).intern();
    let world = BareWorld(Source::new(id, text));
    let made = typst::compile::<PagedDocument>(&world as &dyn World);
    Bare(made.output.expect("a page"))
}

/// What a typesetter needs for one page: a source, a library, two fonts.
struct BareWorld(Source);

static LIBRARY: LazyLock<LazyHash<Library>> = LazyLock::new(|| LazyHash::new(Library::default()));
static FONTS: LazyLock<(Vec<Font>, LazyHash<FontBook>)> = LazyLock::new(|| {
    let files = Fonts::bundled_files().into_iter().take(2);
    let fonts: Vec<Font> = files
        .flat_map(|file| Font::iter(Bytes::new(file)))
        .collect();
    let book = LazyHash::new(FontBook::from_fonts(&fonts));
    (fonts, book)
});

impl World for BareWorld {
    fn library(&self) -> &LazyHash<Library> {
        &LIBRARY
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &FONTS.1
    }

    fn main(&self) -> FileId {
        self.0.id()
    }

    fn source(&self, _: FileId) -> FileResult<Source> {
        Ok(self.0.clone())
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        Err(FileError::NotFound(id.vpath().get_without_slash().into()))
    }

    fn font(&self, index: usize) -> Option<Font> {
        FONTS.0.get(index).cloned()
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}
