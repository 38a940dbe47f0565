//! A laid out page as a picture, for the window.

use latchwright_model::unit::MM_PER_INCH;
use typst::utils::Scalar;
use typst_layout::Page;
use typst_render::{RenderOptions, render};

/// Points to the millimetre.
const POINTS_PER_MM: f64 = 72.0 / MM_PER_INCH;

/// The largest picture that is made, pixels on a side.
const LARGEST_SIDE: f64 = 8192.0;

/// A picture in rows from the top, four bytes a pixel: red, green, blue, opacity (not premultiplied).
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Picture {
    /// Pixels across.
    pub width: usize,
    /// Pixels down.
    pub height: usize,
    /// `width * height * 4` bytes.
    pub rgba: Vec<u8>,
}

/// Draws `page` with so many pixels to the millimetre, or as many as 8192 pixels a side allow.
pub(crate) fn picture(page: &Page, pixels_per_mm: f64) -> Picture {
    let longest_pt = page
        .frame
        .width()
        .to_pt()
        .max(page.frame.height().to_pt())
        .max(1.0);
    let wanted = if pixels_per_mm.is_finite() {
        pixels_per_mm.max(0.1)
    } else {
        1.0
    };
    let pixels_per_point = (wanted / POINTS_PER_MM).min(LARGEST_SIDE / longest_pt);
    let options = RenderOptions {
        pixel_per_pt: Scalar::new(pixels_per_point),
        render_bleed: false,
    };
    let pixmap = render(page, &options);
    let (width, height) = (pixmap.width() as usize, pixmap.height() as usize);
    Picture {
        width,
        height,
        rgba: pixmap.take_demultiplied(),
    }
}
