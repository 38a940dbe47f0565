//! Papers to look at: laid out beside the window, one page at a time as a picture.

use std::sync::Arc;

use egui::{ColorImage, Context, TextureFilter, TextureHandle, TextureOptions};
use latchwright_model::Design;
use latchwright_papers::{Picture, Sheets};
use latchwright_session::Session;
use latchwright_session::products::{self, Wanted};

use crate::job::Job;

/// Pixels to the millimetre of a whole page, and of one that is looked at closely.
const WHOLE: f64 = 4.0;
const CLOSE: f64 = 9.0;
/// A page in a small window keeps its thin lines: it is shrunk in halves before it is shown.
const SHRUNK: TextureOptions = TextureOptions {
    mipmap_mode: Some(TextureFilter::Linear),
    ..TextureOptions::LINEAR
};

/// One page and how large it is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Look {
    /// Which page, from 0.
    pub page: usize,
    /// Close to, so that fine print can be read.
    pub close: bool,
}

/// What a picture shows.
type Key = (u64, Wanted, Look);

struct Done {
    key: Key,
    made: Result<(Arc<Sheets>, Option<Picture>), String>,
}

/// The paper as last laid out, and its page as last drawn.
#[derive(Default)]
pub struct Pages {
    sheets: Option<(u64, Wanted, Arc<Sheets>)>,
    refused: Option<(u64, Wanted, String)>,
    texture: Option<(Key, TextureHandle)>,
    job: Job<Done>,
}

impl Pages {
    /// Takes what has been made since, and asks for what is wanted now.
    pub fn follow(&mut self, ctx: &Context, session: &Session, wanted: Wanted, look: Look) {
        if let Some(done) = self.job.poll() {
            self.take(ctx, done);
        }
        let revision = session.revision();
        let refused = self.refused(revision, wanted).is_some();
        let shown = self.texture.as_ref().map(|(key, _)| *key);
        let key = (revision, wanted, look);
        if refused || shown == Some(key) || self.job.busy() {
            return;
        }
        let sheets = self
            .sheets
            .as_ref()
            .filter(|(of, as_wanted, _)| (*of, *as_wanted) == (revision, wanted))
            .map(|(_, _, sheets)| Arc::clone(sheets));
        let design = Arc::clone(session.design());
        self.job.start(ctx, move || Done {
            key,
            made: products::guarded(|| make(&design, key, sheets)),
        });
    }

    fn take(&mut self, ctx: &Context, done: Done) {
        let (revision, wanted, _) = done.key;
        match done.made {
            Ok((sheets, picture)) => {
                self.refused = None;
                self.sheets = Some((revision, wanted, sheets));
                self.texture = picture.map(|picture| {
                    let size = [picture.width, picture.height];
                    let image = ColorImage::from_rgba_unmultiplied(size, &picture.rgba);
                    let texture = ctx.load_texture("page", image, SHRUNK);
                    (done.key, texture)
                });
            }
            Err(why) => self.refused = Some((revision, wanted, why)),
        }
    }

    /// Why there is none, where there is none.
    pub fn refused(&self, revision: u64, wanted: Wanted) -> Option<&str> {
        let (of, as_wanted, why) = self.refused.as_ref()?;
        ((*of, *as_wanted) == (revision, wanted)).then_some(why)
    }

    /// How many pages the paper has, once it is laid out.
    pub fn count(&self, wanted: Wanted) -> Option<usize> {
        let (_, of, sheets) = self.sheets.as_ref()?;
        (*of == wanted).then(|| sheets.count())
    }

    /// The page as last drawn, also while a newer one is being made; never that of another paper.
    pub fn texture(&self, wanted: Wanted) -> Option<&TextureHandle> {
        let ((_, of, _), texture) = self.texture.as_ref()?;
        (of.paper == wanted.paper).then_some(texture)
    }

    /// Whether something newer is on its way.
    pub fn busy(&self) -> bool {
        self.job.busy()
    }
}

fn make(
    design: &Design,
    (_, wanted, look): Key,
    sheets: Option<Arc<Sheets>>,
) -> Result<(Arc<Sheets>, Option<Picture>), String> {
    let sheets = match sheets {
        Some(sheets) => sheets,
        None => Arc::new(products::sheets(design, wanted)?),
    };
    let scale = if look.close { CLOSE } else { WHOLE };
    let last = sheets.count().saturating_sub(1);
    let picture = sheets.picture(look.page.min(last), scale);
    Ok((sheets, picture))
}
