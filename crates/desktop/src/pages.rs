//! Papers to look at: laid out beside the window, one page at a time as a picture.

use std::sync::Arc;

use egui::{ColorImage, Context, TextureFilter, TextureHandle, TextureOptions};
use latchwright_papers::{Picture, Sheets};
use latchwright_session::Session;
use latchwright_session::products::{self, Wanted};
use latchwright_session::words::products::product_error;

use crate::follow::{Ended, Follow, Key, NotMade};
use crate::tasks::{TaskKind, Tasks};

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

/// What a page is of.
#[derive(Debug, Clone, Copy, PartialEq)]
struct PageKey {
    revision: u64,
    wanted: Wanted,
    look: Look,
}

impl Key for PageKey {
    fn revision(&self) -> u64 {
        self.revision
    }
}

/// A paper as laid out, and one page of it as drawn.
#[derive(Default)]
struct Page {
    sheets: Option<Arc<Sheets>>,
    /// As it comes from the thread.
    picture: Option<Picture>,
    /// As it is shown.
    texture: Option<TextureHandle>,
}

/// The paper as last laid out, and its page as last drawn.
pub struct Pages(Follow<PageKey, Page>);

impl Default for Pages {
    fn default() -> Self {
        Self(Follow::new(TaskKind::Page, Page::default()))
    }
}

impl Pages {
    /// Takes what has been made since, and asks for what is wanted now.
    pub fn follow(
        &mut self,
        ctx: &Context,
        tasks: &mut Tasks,
        session: &Session,
        wanted: Wanted,
        look: Look,
    ) {
        if self.0.poll() == Some(Ended::Made) {
            let page = self.0.value_mut();
            page.texture = page.picture.take().map(|picture| {
                let size = [picture.width, picture.height];
                let image = ColorImage::from_rgba_unmultiplied(size, &picture.rgba);
                ctx.load_texture("page", image, SHRUNK)
            });
        }
        let revision = session.revision();
        if self.refused(revision, wanted).is_some() {
            return;
        }
        let key = PageKey {
            revision,
            wanted,
            look,
        };
        let same = |of: &&PageKey| (of.revision, of.wanted) == (revision, wanted);
        let laid_out = self.0.key().filter(same);
        let sheets = laid_out.and_then(|_| self.0.value().sheets.clone());
        let design = Arc::clone(session.design());
        self.0.want(tasks, &key, move |reins| {
            let refused = |err| NotMade::Refused(product_error(&err, design.units));
            let made = if let Some(sheets) = sheets {
                sheets
            } else {
                let made = products::sheets(&design, wanted, &mut |done| reins.tick(done));
                let made = made.continue_value().ok_or(NotMade::Stopped)?;
                Arc::new(made.map_err(refused)?)
            };
            if reins.tick(0.8).is_break() {
                return Err(NotMade::Stopped);
            }
            products::guarded(|| Ok(drawn(made, look))).map_err(refused)
        });
    }

    /// Why there is none, where there is none.
    pub fn refused(&self, revision: u64, wanted: Wanted) -> Option<&str> {
        let (of, why) = self.0.refused()?;
        ((of.revision, of.wanted) == (revision, wanted)).then_some(why)
    }

    /// How many pages the paper has, once it is laid out.
    pub fn count(&self, wanted: Wanted) -> Option<usize> {
        let of = self.0.key()?;
        let sheets = self.0.value().sheets.as_ref()?;
        (of.wanted == wanted).then(|| sheets.count())
    }

    /// The page as last drawn, also while a newer one is being made; never that of another paper.
    pub fn texture(&self, wanted: Wanted) -> Option<&TextureHandle> {
        let of = self.0.key()?;
        let texture = self.0.value().texture.as_ref()?;
        (of.wanted.paper == wanted.paper).then_some(texture)
    }
}

fn drawn(sheets: Arc<Sheets>, look: Look) -> Page {
    let scale = if look.close { CLOSE } else { WHOLE };
    let last = sheets.count().saturating_sub(1);
    let picture = sheets.picture(look.page.min(last), scale);
    Page {
        sheets: Some(sheets),
        picture,
        texture: None,
    }
}
