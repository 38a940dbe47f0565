//! Pictures of the window without display, driver or graphics card: what the window would draw is
//! filled in by a small renderer that gives the same bytes everywhere.

use std::collections::BTreeMap;

use dream_soft_render::{ClipRect, Color, Error, Mesh, SoftwareRenderer, Vertex};
use egui::epaint::{ClippedPrimitive, ImageData, ImageDelta, Primitive};
use egui::{Color32, ColorImage, Context, FullOutput, TextureId, TexturesDelta, Vec2};
use egui_kittest::TestRenderer;
use image::RgbaImage;

/// Draws the window under test into an image; at most 1280 × 720 pixels.
#[derive(Default)]
pub struct Rendered {
    /// What the window has given to draw with, letters first.
    textures: BTreeMap<TextureId, ColorImage>,
}

impl TestRenderer for Rendered {
    fn handle_delta(&mut self, delta: &mut TexturesDelta) {
        let set: BTreeMap<_, _> = delta.set.drain().collect();
        for (id, changes) in set {
            for change in changes {
                self.change(id, &change);
            }
        }
        self.textures.retain(|id, _| !delta.free.contains(id));
        delta.free.clear();
    }

    fn render(&mut self, ctx: &Context, output: &FullOutput) -> Result<RgbaImage, String> {
        let scale = output.pixels_per_point;
        let size = ctx.content_rect().size() * scale;
        let shapes = ctx.tessellate(output.shapes.clone(), scale);
        self.draw(size, scale, &shapes)
            .map_err(|error| error.to_string())
    }
}

impl Rendered {
    fn change(&mut self, id: TextureId, change: &ImageDelta) {
        let ImageData::Color(part) = &change.image;
        let Some([left, top]) = change.pos else {
            self.textures.insert(id, part.as_ref().clone());
            return;
        };
        let Some(whole) = self.textures.get_mut(&id) else {
            return;
        };
        let [width, height] = part.size;
        for row in 0..height {
            let to = (top + row) * whole.width() + left;
            whole.pixels[to..to + width]
                .copy_from_slice(&part.pixels[row * width..(row + 1) * width]);
        }
    }

    fn draw(
        &self,
        size: Vec2,
        scale: f32,
        shapes: &[ClippedPrimitive],
    ) -> Result<RgbaImage, Error> {
        let mut renderer = SoftwareRenderer::default();
        let mut named = BTreeMap::new();
        for (id, image) in &self.textures {
            let bytes: Vec<u8> = image.pixels.iter().flat_map(Color32::to_array).collect();
            let [width, height] = image.size;
            named.insert(*id, renderer.create_texture(width, height, &bytes)?);
        }
        let (width, height) = (whole(size.x), whole(size.y));
        let mut frame = renderer.begin_frame(width as usize, height as usize)?;
        frame.clear(Color::BLACK);
        for shape in shapes {
            let Primitive::Mesh(mesh) = &shape.primitive else {
                continue;
            };
            let vertices: Vec<Vertex> = mesh
                .vertices
                .iter()
                .map(|vertex| {
                    let [r, g, b, a] = vertex.color.to_array();
                    Vertex::new(
                        [vertex.pos.x * scale, vertex.pos.y * scale],
                        [vertex.uv.x, vertex.uv.y],
                        Color::from_rgba_premultiplied(r, g, b, a),
                    )
                })
                .collect();
            let clip = shape.clip_rect * scale;
            let clip = ClipRect::new(
                whole(clip.min.x),
                whole(clip.min.y),
                whole(clip.max.x),
                whole(clip.max.y),
            );
            let mesh = Mesh {
                vertices: &vertices,
                indices: &mesh.indices,
                texture: named.get(&mesh.texture_id).copied(),
            };
            frame.mesh(mesh, clip)?;
        }
        let pixels = frame.surface().pixels.clone();
        Ok(RgbaImage::from_raw(width, height, pixels).unwrap_or_default())
    }
}

/// A length in whole pixels; what lies off the picture is at its edge.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "kept within the numbers that there are"
)]
fn whole(pixels: f32) -> u32 {
    pixels.round().clamp(0.0, 16_384.0) as u32
}
