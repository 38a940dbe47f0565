//! Printed parts made and drawn beside the window: meshes once for a state of the design, then a
//! picture for each way of looking at them.

use std::sync::{Arc, Mutex, PoisonError};

use egui::{ColorImage, Context, TextureHandle, TextureOptions};
use latchwright_drawing::{Ink, Palette, Rgb};
use latchwright_session::Session;
use latchwright_session::products;
use latchwright_session::words::products::{BROKE_OFF, product_error};
use latchwright_solids::view::{self, Camera, Colours, Cut, Look, Painter, Scene, anchors, pick};
use latchwright_solids::{Extent, Grip, Options, Part, Relief};

use crate::follow::{Ended, Follow, Key, NotMade};
use crate::tasks::{self, Reins, TaskKind, Tasks};

/// What the maker chooses about the parts beside the design.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Chosen {
    /// What the fingers hold.
    pub grip: Grip,
    /// How pointers and labels stand out.
    pub relief: Relief,
    /// Standing pins for a wooden slider as one strip.
    pub pin_strip: bool,
}

impl Chosen {
    /// As the parts are made with it.
    pub fn options(self) -> Options {
        Options {
            grip: self.grip,
            relief: self.relief,
            pin_strip: self.pin_strip,
            ..Options::default()
        }
    }
}

/// Which parts are looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Shown {
    /// Where they sit in the lid.
    #[default]
    InTheLid,
    /// All of them as they lie to be printed.
    Lying,
    /// One alone, as it lies.
    One(usize),
}

/// One way of looking.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct View {
    /// What.
    pub shown: Shown,
    /// From where; its zoom and centre are fitted where `fit` is set.
    pub camera: Camera,
    /// Bring all of it into the picture.
    pub fit: bool,
    /// How far the assembly is pulled apart, 0 to 1.
    pub pulled: f64,
    /// A section plane.
    pub cut: Option<Cut>,
    /// The part that stands out.
    pub chosen: Option<usize>,
    /// Size of the picture, pixels.
    pub size: (u32, u32),
    /// Pixels a point.
    pub line: f32,
    /// On slate.
    pub dark: bool,
}

/// The parts of one state of the design.
pub struct Made {
    /// In their fixed order.
    pub parts: Vec<Part>,
    lid: Extent,
    lying: Extent,
}

impl Made {
    fn of(parts: Vec<Part>) -> Self {
        Self {
            lid: Scene::assembly(&parts, 0.0).extent(),
            lying: Scene::parts(&parts).extent(),
            parts,
        }
    }

    /// The box around what is shown, mm; an assembly as it sits together.
    pub fn extent(&self, shown: Shown) -> Extent {
        match shown {
            Shown::InTheLid => self.lid,
            Shown::Lying => self.lying,
            Shown::One(index) => self.parts.get(index).map(Part::extent).unwrap_or_default(),
        }
    }
}

/// A picture and what is where on it.
pub struct Picture {
    /// As it comes from the thread; it goes into the texture.
    image: Option<view::Image>,
    /// How it was looked at, the camera fitted.
    pub view: View,
    /// For each part that is seen a point on it, pixels of the picture.
    pub anchors: Vec<(usize, f64, f64)>,
    /// The answer to the question that was asked with it.
    picked: Option<Picked>,
}

/// What parts are of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct PartsKey {
    revision: u64,
    chosen: Chosen,
}

impl Key for PartsKey {
    fn revision(&self) -> u64 {
        self.revision
    }
}

/// What a picture is of.
#[derive(Debug, Clone, Copy, PartialEq)]
struct PictureKey {
    parts: PartsKey,
    view: View,
}

impl Key for PictureKey {
    fn revision(&self) -> u64 {
        self.parts.revision
    }
}

/// What one picture leaves to the next.
#[derive(Default)]
struct Bench {
    scene: Option<(PartsKey, Shown, Scene)>,
    painter: Painter,
}

/// What lies where it was asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Picked {
    /// This part, by its place in the list.
    Part(usize),
    /// No part.
    Nothing,
}

/// The parts, the picture and the work on the next one.
pub struct Printed {
    made: Follow<PartsKey, Option<Arc<Made>>>,
    picture: Follow<PictureKey, Option<Picture>>,
    texture: Option<TextureHandle>,
    bench: Arc<Mutex<Bench>>,
    pick: Option<(f64, f64)>,
}

impl Default for Printed {
    fn default() -> Self {
        Self {
            made: Follow::new(TaskKind::Parts, None),
            picture: Follow::new(TaskKind::PartsPicture, None),
            texture: None,
            bench: Arc::default(),
            pick: None,
        }
    }
}

impl Printed {
    /// Takes what was made and drawn since, and asks for what is to be seen now.
    pub fn follow(
        &mut self,
        ctx: &Context,
        tasks: &mut Tasks,
        session: &Session,
        chosen: Chosen,
        view: &View,
    ) {
        self.made.poll();
        if self.picture.poll() == Some(Ended::Made) {
            self.show(ctx);
        }
        let parts = PartsKey {
            revision: session.revision(),
            chosen,
        };
        if view.size.0 == 0 || self.refused(parts.revision, chosen).is_some() {
            return;
        }
        let design = Arc::clone(session.design());
        self.made.want(tasks, &parts, move |reins| {
            let options = chosen.options();
            let made = products::parts_with_tick(&design, &options, &mut |done| reins.tick(done));
            let made = made.continue_value().ok_or(NotMade::Stopped)?;
            let made = made.map_err(|err| NotMade::Refused(product_error(&err, design.units)))?;
            Ok(Some(Arc::new(Made::of(made))))
        });
        if let Some(Some(made)) = self.made.of(&parts) {
            let made = Arc::clone(made);
            self.draw(tasks, made, PictureKey { parts, view: *view });
        }
    }

    /// Asks for the picture, unless it is there.
    fn draw(&mut self, tasks: &mut Tasks, made: Arc<Made>, key: PictureKey) {
        let of = self.picture.key().is_some_and(|of| of.parts == key.parts);
        let drawn = self.picture.value().as_ref().filter(|_| of);
        let seen = drawn.is_some_and(|picture| !key.view.fit && picture.view == key.view);
        if self.picture.on_its_way() || seen && self.pick.is_none() {
            return;
        }
        let (bench, pick) = (Arc::clone(&self.bench), self.pick.take());
        let work = move |_: &Reins| {
            let mut bench = bench.lock().unwrap_or_else(PoisonError::into_inner);
            let picture = tasks::drawn(|| draw(&made.parts, key, &mut bench, pick));
            // tried again it would break off again
            let fault = || NotMade::Refused(BROKE_OFF.to_owned());
            picture.map(Some).ok_or_else(fault)
        };
        if pick.is_some() {
            self.picture.begin(tasks, key, work);
        } else {
            self.picture.want(tasks, &key, work);
        }
    }

    /// The picture that has come goes into the texture.
    fn show(&mut self, ctx: &Context) {
        let picture = self.picture.value_mut().as_mut();
        let Some(image) = picture.and_then(|picture| picture.image.take()) else {
            return;
        };
        let size = [image.width as usize, image.height as usize];
        let image = ColorImage::from_rgba_unmultiplied(size, &image.rgba);
        if let Some(texture) = &mut self.texture {
            texture.set(image, TextureOptions::LINEAR);
        } else {
            let texture = ctx.load_texture("printed parts", image, TextureOptions::LINEAR);
            self.texture = Some(texture);
        }
    }

    /// The parts of this state of the design, once they are made.
    pub fn parts(&self, revision: u64, chosen: Chosen) -> Option<&Arc<Made>> {
        self.made.of(&PartsKey { revision, chosen })?.as_ref()
    }

    /// Why there are none, a sentence a line.
    pub fn refused(&self, revision: u64, chosen: Chosen) -> Option<&str> {
        let key = PartsKey { revision, chosen };
        let parts = self.made.refused().filter(|(of, _)| **of == key);
        let picture = self.picture.refused().filter(|(of, _)| of.parts == key);
        let (parts, picture) = (parts.map(|(_, why)| why), picture.map(|(_, why)| why));
        parts.or(picture)
    }

    /// The picture as last drawn and its texture, also while a newer one is on its way.
    pub fn picture(&self) -> Option<(&Picture, &TextureHandle)> {
        self.picture.value().as_ref().zip(self.texture.as_ref())
    }

    /// Asks which part lies at this pixel; the answer comes with [`Self::picked`].
    pub fn pick_at(&mut self, x: f64, y: f64) {
        self.pick = Some((x, y));
    }

    /// The answer to the last question, once.
    pub fn picked(&mut self) -> Option<Picked> {
        self.picture.value_mut().as_mut()?.picked.take()
    }
}

/// The picture of these parts, and what lies where it was asked for.
fn draw(
    parts: &[Part],
    key: PictureKey,
    bench: &mut Bench,
    pick_at: Option<(f64, f64)>,
) -> Picture {
    let mut view = key.view;
    let kept = bench.scene.take();
    let mut scene = match kept {
        Some((of, shown, scene)) if (of, shown) == (key.parts, view.shown) => scene,
        _ => scene_of(parts, view.shown),
    };
    if view.shown == Shown::InTheLid {
        scene.pull(view.pulled);
    }
    if view.fit {
        let Camera { turn, tilt, .. } = view.camera;
        view.camera = Camera::fit(&scene, turn, tilt, view.size);
        view.fit = false;
    }
    let look = Look {
        colours: colours(view.dark),
        chosen: view.chosen.and_then(|part| place_of(view.shown, part)),
        line: f64::from(view.line),
    };
    let (camera, cut, size) = (&view.camera, view.cut, view.size);
    let image = bench.painter.render(&scene, camera, cut, size, &look);
    let mut anchors = anchors(&scene, camera, cut, size);
    let mut picked = pick_at.map(|(x, y)| pick(&scene, camera, cut, size, x, y));
    if let Shown::One(part) = view.shown {
        for anchor in &mut anchors {
            anchor.0 = part;
        }
        picked = picked.map(|found| found.map(|_| part));
    }
    bench.scene = Some((key.parts, view.shown, scene));
    Picture {
        image: Some(image),
        view,
        anchors,
        picked: picked.map(|found| found.map_or(Picked::Nothing, Picked::Part)),
    }
}

/// Where a part stands in the list of which its scene was made.
fn place_of(shown: Shown, part: usize) -> Option<usize> {
    match shown {
        Shown::One(one) => (one == part).then_some(0),
        Shown::InTheLid | Shown::Lying => Some(part),
    }
}

fn scene_of(parts: &[Part], shown: Shown) -> Scene {
    match shown {
        Shown::InTheLid => Scene::assembly(parts, 0.0),
        Shown::Lying => Scene::parts(parts),
        Shown::One(index) => Scene::parts(parts.get(index..=index).unwrap_or_default()),
    }
}

fn colours(dark: bool) -> Colours {
    let palette = if dark {
        &Palette::DARK
    } else {
        &Palette::LIGHT
    };
    let at = |ink| {
        let Rgb { r, g, b } = palette.colour(ink);
        [r, g, b]
    };
    Colours {
        paper: at(Ink::Paper),
        part: at(Ink::Part),
        ink: at(Ink::Outline),
        thin: at(Ink::Thin),
        faint: at(Ink::Faint),
        hatch: at(Ink::Hatch),
        accent: at(Ink::Movable),
        accent_tint: at(Ink::MovableTint),
    }
}
