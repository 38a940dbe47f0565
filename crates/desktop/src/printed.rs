//! Printed parts made and drawn beside the window: meshes once for a state of the design, then a
//! picture for each way of looking at them.

use std::sync::Arc;

use egui::{ColorImage, Context, TextureHandle, TextureOptions};
use latchwright_drawing::{Ink, Palette, Rgb};
use latchwright_model::Design;
use latchwright_session::Session;
use latchwright_session::products;
use latchwright_solids::view::{self, Camera, Colours, Cut, Look, Painter, Scene, anchors, pick};
use latchwright_solids::{Extent, Grip, Options, Part, Relief};

use crate::job::{self, Job};

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
    /// The picture.
    pub texture: TextureHandle,
    /// How it was looked at, the camera fitted.
    pub view: View,
    /// For each part that is seen a point on it, pixels of the picture.
    pub anchors: Vec<(usize, f64, f64)>,
}

type Key = (u64, Chosen);

/// What is carried to the thread and back.
#[derive(Default)]
struct Bench {
    scene: Option<(Key, Shown, Scene)>,
    painter: Painter,
}

struct Drawn {
    bench: Bench,
    made: Option<(Key, Result<Arc<Made>, String>)>,
    image: Option<Shot>,
    picked: Option<Picked>,
}

/// A picture as it comes from the thread.
struct Shot {
    key: Key,
    view: View,
    image: view::Image,
    anchors: Vec<(usize, f64, f64)>,
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
#[derive(Default)]
pub struct Printed {
    made: Option<(Key, Arc<Made>)>,
    refused: Option<(Key, String)>,
    picture: Option<(Key, Picture)>,
    bench: Bench,
    job: Job<Drawn>,
    pick: Option<(f64, f64)>,
    picked: Option<Picked>,
}

impl Printed {
    /// Takes what was made and drawn since, and asks for what is to be seen now.
    pub fn follow(&mut self, ctx: &Context, session: &Session, chosen: Chosen, view: &View) {
        if let Some(drawn) = self.job.poll() {
            self.take(ctx, drawn);
        }
        let key = (session.revision(), chosen);
        if self.job.busy() || self.refused(key.0, chosen).is_some() || view.size.0 == 0 {
            return;
        }
        let seen = self
            .picture
            .as_ref()
            .is_some_and(|(of, picture)| *of == key && !view.fit && picture.view == *view);
        if seen && self.pick.is_none() {
            return;
        }
        let made = self.parts(key.0, chosen).cloned();
        let (design, view) = (Arc::clone(session.design()), *view);
        let (bench, pick) = (std::mem::take(&mut self.bench), self.pick.take());
        self.job
            .start(ctx, move || draw(&design, key, made, view, bench, pick));
    }

    fn take(&mut self, ctx: &Context, drawn: Drawn) {
        self.bench = drawn.bench;
        match drawn.made {
            Some((key, Ok(made))) => (self.made, self.refused) = (Some((key, made)), None),
            Some((key, Err(why))) => self.refused = Some((key, why)),
            None => {}
        }
        if let Some(Shot {
            key,
            view,
            image,
            anchors,
        }) = drawn.image
        {
            let size = [image.width as usize, image.height as usize];
            let image = ColorImage::from_rgba_unmultiplied(size, &image.rgba);
            let texture = match self.picture.take() {
                Some((_, mut old)) => {
                    old.texture.set(image, TextureOptions::LINEAR);
                    old.texture
                }
                None => ctx.load_texture("printed parts", image, TextureOptions::LINEAR),
            };
            let picture = Picture {
                texture,
                view,
                anchors,
            };
            self.picture = Some((key, picture));
        }
        if drawn.picked.is_some() {
            self.picked = drawn.picked;
        }
    }

    /// The parts of this state of the design, once they are made.
    pub fn parts(&self, revision: u64, chosen: Chosen) -> Option<&Arc<Made>> {
        let (key, made) = self.made.as_ref()?;
        (*key == (revision, chosen)).then_some(made)
    }

    /// Why there are none, a sentence a line.
    pub fn refused(&self, revision: u64, chosen: Chosen) -> Option<&str> {
        let (key, why) = self.refused.as_ref()?;
        (*key == (revision, chosen)).then_some(why)
    }

    /// The picture as last drawn, also while a newer one is on its way.
    pub fn picture(&self) -> Option<&Picture> {
        self.picture.as_ref().map(|(_, picture)| picture)
    }

    /// Asks which part lies at this pixel; the answer comes with [`Self::picked`].
    pub fn pick_at(&mut self, x: f64, y: f64) {
        self.pick = Some((x, y));
    }

    /// The answer to the last question, once.
    pub fn picked(&mut self) -> Option<Picked> {
        self.picked.take()
    }
}

fn draw(
    design: &Design,
    key: Key,
    made: Option<Arc<Made>>,
    mut view: View,
    mut bench: Bench,
    pick_at: Option<(f64, f64)>,
) -> Drawn {
    let fresh = made.is_none();
    let made = match made {
        Some(made) => Ok(made),
        None => products::parts(design, &key.1.options()).map(|parts| Arc::new(Made::of(parts))),
    };
    let parts = match &made {
        Ok(made) => Arc::clone(made),
        Err(_) => {
            return Drawn {
                bench,
                made: Some((key, made)),
                image: None,
                picked: None,
            };
        }
    };
    let image = job::drawn(|| {
        let kept = bench.scene.take();
        let mut scene = match kept {
            Some((of, shown, scene)) if (of, shown) == (key, view.shown) => scene,
            _ => scene_of(&parts.parts, view.shown),
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
        let mut names = anchors(&scene, camera, cut, size);
        let mut picked = pick_at.map(|(x, y)| pick(&scene, camera, cut, size, x, y));
        if let Shown::One(part) = view.shown {
            for name in &mut names {
                name.0 = part;
            }
            picked = picked.map(|found| found.map(|_| part));
        }
        bench.scene = Some((key, view.shown, scene));
        (image, names, picked)
    });
    let (image, picked) = match image {
        // tried again it would break off again
        None => {
            return Drawn {
                bench,
                made: Some((key, Err(products::FAULT.to_owned()))),
                image: None,
                picked: None,
            };
        }
        Some((image, anchors, picked)) => {
            let shot = Shot {
                key,
                view,
                image,
                anchors,
            };
            let named = |found: Option<usize>| found.map_or(Picked::Nothing, Picked::Part);
            (Some(shot), picked.map(named))
        }
    };
    Drawn {
        bench,
        made: fresh.then_some((key, made)),
        image,
        picked,
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
