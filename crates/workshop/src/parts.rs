//! Every part of the job: what is cut, what is printed and what is bought, with sizes and notes.

use latchwright_drawing::slider_outline;
use latchwright_geometry::Point;
use latchwright_solver::model::{Design, Dial, Grain, Material, PinMake};

use crate::inch::Rule;
use crate::joinery::{End, Joinery, Panel, Side, SidePlace, joinery};
use crate::tame::{material_name, tame};

/// Width of the strips that guide the slider's neck, mm: common practice, no source.
const STRIP: f64 = 10.0;
/// Thickness of the bridges that carry the slider, mm: common practice, no source.
const BRIDGE: f64 = 3.0;
/// How far a screw should go into the wood below, mm: common practice, no source.
const BITE: f64 = 12.0;

/// Where a part comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Make {
    /// Cut from a board or a sheet.
    Wood,
    /// Printed.
    Printed,
    /// Bought as it is.
    Bought,
}

/// Which part of the box a piece of wood is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Role {
    /// One of the four sides.
    Side(SidePlace),
    /// The floor.
    Floor,
    /// The top of the lid.
    Plate,
    /// Crossbar, fingers, neck and tab.
    Slider,
    /// What holds the tab down.
    Keeper,
    /// A strip beside the slider's neck.
    GuideStrip,
    /// What carries the slider from below.
    GuideBridge,
    /// Printed or bought.
    Other,
}

/// Size of a part, mm. For wood the length runs along the grain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Size {
    /// Along the grain, or the longest way.
    pub length: f64,
    /// Across.
    pub width: f64,
    /// Through.
    pub thickness: f64,
}

/// One line of the list.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// What people call it.
    pub name: String,
    /// Where it comes from.
    pub make: Make,
    /// Which part of the box it is.
    pub role: Role,
    /// How many.
    pub count: u32,
    /// With its coats on.
    pub finished: Size,
    /// As it leaves the plane, coats taken off; for wood only.
    pub bare: Option<Size>,
    /// As it is sawn out first; for wood only.
    pub rough: Option<Size>,
    /// Species, kind of sheet, or what it is bought as.
    pub material: String,
    /// Which way the fibres run; for solid wood only.
    pub grain: Option<&'static str>,
    /// What else matters, sentences without a stop.
    pub notes: Vec<String>,
}

/// Every part of `design`: wood first in the order of work, then printed, then bought parts.
pub fn parts(design: &Design) -> Vec<Part> {
    let design = &tame(design);
    let list = Lister {
        design,
        rule: Rule::of(design),
        film: design.workmanship.film.max(0.0),
    };
    let joinery = joinery(design);
    let mut all: Vec<Part> = joinery
        .sides
        .iter()
        .map(|side| list.side(&joinery, side))
        .collect();
    all.push(list.floor(&joinery.floor));
    all.push(list.plate(&joinery));
    all.push(list.slider());
    all.push(list.keeper());
    all.extend(list.guide());
    all.extend(list.dials());
    all.push(list.finger_knob());
    all.extend(list.pins());
    all.extend(list.bought(&joinery));
    // In order of making, and stable: wood, printed, bought.
    all.sort_by_key(|part| part.make);
    all
}

struct Lister<'a> {
    design: &'a Design,
    rule: Rule,
    film: f64,
}

impl Lister<'_> {
    /// A part of wood or sheet with its three sizes.
    fn wood(&self, name: &str, role: Role, finished: Size, material: &Material) -> Part {
        let (coats, rough) = (2.0 * self.film, self.design.bench.rough.max(0.0));
        let bare = Size {
            length: finished.length - coats,
            width: finished.width - coats,
            thickness: finished.thickness - coats,
        };
        let solid = matches!(material, Material::Wood { .. });
        Part {
            name: name.to_owned(),
            make: if matches!(material, Material::Printed) {
                Make::Printed
            } else {
                Make::Wood
            },
            role,
            count: 1,
            finished,
            bare: Some(bare),
            rough: Some(Size {
                length: bare.length + rough,
                width: bare.width + rough,
                ..bare
            }),
            material: material_name(material),
            grain: solid.then_some("along its length"),
            notes: Vec::new(),
        }
    }

    fn other(name: String, make: Make, count: u32, size: (f64, f64, f64), material: &str) -> Part {
        Part {
            name,
            make,
            role: Role::Other,
            count,
            finished: Size {
                length: size.0,
                width: size.1,
                thickness: size.2,
            },
            bare: None,
            rough: None,
            material: material.to_owned(),
            grain: None,
            notes: Vec::new(),
        }
    }

    fn side(&self, joinery: &Joinery, side: &Side) -> Part {
        let body = &self.design.body;
        let material = Material::Wood {
            species: body.wood.clone(),
            sawn: body.sawn,
            grain: Grain::AlongX,
        };
        let size = Size {
            length: side.outside.finished,
            width: side.height.finished,
            thickness: side.thickness.finished,
        };
        let mut part = self.wood(side.place.name(), Role::Side(side.place), size, &material);
        // The length follows from the joint, not from coats on its ends.
        let rough = self.design.bench.rough.max(0.0);
        if let (Some(bare), Some(sawn)) = (&mut part.bare, &mut part.rough) {
            bare.length = side.outside.bare;
            sawn.length = side.outside.bare + rough;
        }
        part.notes.push(match side.ends {
            End::Mitred => format!(
                "both ends at 45°: long point {} outside, short point {} inside, bare",
                self.rule.say(side.outside.bare),
                self.rule.say(side.inside.bare)
            ),
            End::Square => "both ends square".to_owned(),
            End::Rabbeted { width, depth } => format!(
                "a rabbet inside at both ends, {} wide and {} deep",
                self.rule.say(width),
                self.rule.say(depth)
            ),
        });
        if joinery.lid.is_some() {
            part.notes
                .push("box and lid in one: the lid is cut off after the glue-up".to_owned());
        }
        part
    }

    fn floor(&self, panel: &Panel) -> Part {
        let (x, y) = (panel.width.finished, panel.depth.finished);
        let along_x = !matches!(
            panel.material,
            Material::Wood {
                grain: Grain::AlongY,
                ..
            }
        );
        let size = turned(x, y, panel.thickness.finished, along_x);
        let mut part = self.wood("floor", Role::Floor, size, &panel.material);
        part.notes.push(format!(
            "{} clear on each side along x, {} along y",
            self.rule.say_fine(panel.gap_x),
            self.rule.say_fine(panel.gap_y)
        ));
        part.notes
            .push("glue only at the middle of two opposite sides, free everywhere else".to_owned());
        part
    }

    fn plate(&self, joinery: &Joinery) -> Part {
        let plate = &self.design.plate;
        let material = Material::Wood {
            species: plate.wood.clone(),
            sawn: plate.sawn,
            grain: plate.grain,
        };
        let size = turned(
            plate.width,
            plate.depth,
            plate.thickness,
            plate.grain == Grain::AlongX,
        );
        let mut part = self.wood("plate", Role::Plate, size, &material);
        match &joinery.top {
            Some(_) => part
                .notes
                .push("loose in its groove: no glue but at the middle of two sides".to_owned()),
            None => part
                .notes
                .push("lies on the sides and is the lid".to_owned()),
        }
        part
    }

    fn slider(&self) -> Part {
        let slider = &self.design.slider;
        let extent = slider_outline(self.design, 0.0).extent();
        let along_x = !matches!(
            slider.material,
            Material::Wood {
                grain: Grain::AlongY,
                ..
            }
        );
        let size = turned(extent.width(), extent.height(), slider.thickness, along_x);
        let mut part = self.wood("slider", Role::Slider, size, &slider.material);
        if matches!(slider.material, Material::Printed) {
            (part.bare, part.rough) = (None, None);
        }
        part.notes.push(
            "its outline is on the template; faces that slide are waxed, not coated".to_owned(),
        );
        part
    }

    fn keeper(&self) -> Part {
        let (keeper, body) = (&self.design.keeper, &self.design.body);
        let material = Material::Wood {
            species: body.wood.clone(),
            sawn: body.sawn,
            grain: Grain::AlongX,
        };
        let size = Size {
            length: keeper.width,
            width: keeper.depth,
            thickness: keeper.thickness,
        };
        self.wood("keeper", Role::Keeper, size, &material)
    }

    /// Two strips beside the neck and two bridges under it.
    fn guide(&self) -> [Part; 2] {
        let (slider, plate) = (&self.design.slider, &self.design.plate);
        let deep = slider.below + slider.thickness;
        let material = Material::Wood {
            species: plate.wood.clone(),
            sawn: plate.sawn,
            grain: Grain::AlongX,
        };
        let size = Size {
            length: slider.guide_length,
            width: STRIP,
            thickness: deep,
        };
        let mut strip = self.wood("guide strip", Role::GuideStrip, size, &material);
        strip.count = 2;
        strip.notes.push(format!(
            "one on each side of the slider's neck, {} clear on each side; bare and waxed; shorten it where the \
             crossbar comes",
            self.rule.say_fine(slider.guide_play)
        ));
        let size = Size {
            length: self.design.tab.width + 2.0 * (slider.guide_play + STRIP),
            width: STRIP,
            thickness: BRIDGE,
        };
        let mut bridge = self.wood("guide bridge", Role::GuideBridge, size, &Material::Plywood);
        bridge.count = 2;
        bridge
            .notes
            .push("screwed across the strips, carries the slider".to_owned());
        let need = deep + BRIDGE;
        if need > plate.room {
            bridge.notes.push(format!(
                "there is {} under the plate, strips and bridge take {}: let the bridge into the strips",
                self.rule.say(plate.room),
                self.rule.say(need)
            ));
        }
        [strip, bridge]
    }

    /// Knobs and discs, those alike on one line.
    fn dials(&self) -> Vec<Part> {
        let dials = &self.design.dials;
        let (rule, mut all) = (self.rule, Vec::new());
        let knobs = alike(dials, |one, other| {
            one.knob == other.knob && one.key == other.key && one.bore == other.bore
        });
        for group in knobs {
            let Some(dial) = group.first().and_then(|index| dials.get(*index)) else {
                continue;
            };
            let mut part = printed(
                format!("knob with post, {}", which(&group)),
                &group,
                (dial.knob.diameter, dial.knob.diameter, dial.knob.height),
            );
            part.notes.push(format!(
                "shaft to turn in a bore of {}",
                rule.say_fine(dial.bore.diameter)
            ));
            all.push(part);
        }
        for group in alike(dials, |one, other| {
            one.disc == other.disc && one.key == other.key
        }) {
            let Some(dial) = group.first().and_then(|index| dials.get(*index)) else {
                continue;
            };
            let across = 2.0 * dial.disc.radius;
            let mut part = printed(
                format!("disc, {}", which(&group)),
                &group,
                (across, across, dial.disc.thickness),
            );
            part.notes.push(match dial.disc.slots.len() {
                1 => "one slot".to_owned(),
                slots => format!("{slots} slots; the mark shows the true one"),
            });
            all.push(part);
        }
        all
    }

    fn finger_knob(&self) -> Part {
        let shank = self.design.slider.shank;
        let size = (2.5 * shank, 2.5 * shank, 2.0 * shank);
        let mut part = Self::other("finger knob".to_owned(), Make::Printed, 1, size, "printed");
        part.notes.push(format!(
            "its shank of {} runs in the plate's slot",
            self.rule.say_fine(shank)
        ));
        part
    }

    fn pins(&self) -> Vec<Part> {
        let dials = &self.design.dials;
        let same = |one: &Dial, other: &Dial| {
            let (one, other) = (&one.pin, &other.pin);
            (one.diameter, one.height, one.make) == (other.diameter, other.height, other.make)
        };
        let mut all = Vec::new();
        for group in alike(dials, same) {
            let Some(dial) = group.first().and_then(|index| dials.get(*index)) else {
                continue;
            };
            let pin = &dial.pin;
            let (make, material, note) = match pin.make {
                PinMake::Steel => (
                    Make::Bought,
                    "steel rod",
                    "file the ends round, glue it in with epoxy",
                ),
                PinMake::Dowel => (Make::Bought, "hardwood dowel", "glue it into its finger"),
                PinMake::PrintedLying => (
                    Make::Printed,
                    "printed",
                    "print it lying down, so that layers run along it",
                ),
                PinMake::PrintedStanding => (
                    Make::Printed,
                    "printed",
                    "printed standing: its root is a layer, the weakest place",
                ),
            };
            let size = (pin.height, pin.diameter, pin.diameter);
            let mut part = Self::other(
                format!("pin, {}", which(&group)),
                make,
                count(&group),
                size,
                material,
            );
            part.notes.push(note.to_owned());
            all.push(part);
        }
        all
    }

    fn bought(&self, joinery: &Joinery) -> Vec<Part> {
        let (hinge, keeper) = (&self.design.body.hinge, &self.design.keeper);
        let mut hinges = Self::other(
            "butt hinge".to_owned(),
            Make::Bought,
            2,
            (hinge.length, hinge.leaf, hinge.thickness),
            "with its own screws",
        );
        hinges
            .notes
            .push("width is that of one leaf up to the middle of the pin".to_owned());
        let mut screws = Self::other(
            "screw for the keeper, No. 4 (2.84 mm)".to_owned(),
            Make::Bought,
            2,
            (keeper.thickness + BITE, 2.84, 2.84),
            "countersunk wood screw",
        );
        if joinery.keeper.on_front < 2.84 + 4.0 {
            screws
                .notes
                .push("the front gives them little wood: see the keeper's notes".to_owned());
        }
        let dials = u32::try_from(self.design.dials.len()).unwrap_or(0);
        let mut all = vec![hinges, screws];
        if dials > 0 {
            let mut disc = Self::other(
                "screw with washer under each disc".to_owned(),
                Make::Bought,
                dials,
                (10.0, 3.0, 3.0),
                "self-tapping, for plastic",
            );
            disc.notes.push(
                "a press fit is never the only thing that keeps a disc in its place".to_owned(),
            );
            all.push(disc);
        }
        all
    }
}

fn turned(x: f64, y: f64, thickness: f64, along_x: bool) -> Size {
    let (length, width) = if along_x { (x, y) } else { (y, x) };
    Size {
        length,
        width,
        thickness,
    }
}

fn printed(name: String, group: &[usize], size: (f64, f64, f64)) -> Part {
    Lister::other(name, Make::Printed, count(group), size, "printed")
}

fn count(group: &[usize]) -> u32 {
    u32::try_from(group.len()).unwrap_or(u32::MAX)
}

/// Numbers of the dials that are alike, in order of the first of each.
fn alike(dials: &[Dial], same: impl Fn(&Dial, &Dial) -> bool) -> Vec<Vec<usize>> {
    let mut groups: Vec<(&Dial, Vec<usize>)> = Vec::new();
    for (index, dial) in dials.iter().enumerate() {
        match groups.iter_mut().find(|(first, _)| same(first, dial)) {
            Some((_, group)) => group.push(index),
            None => groups.push((dial, vec![index])),
        }
    }
    groups.into_iter().map(|(_, group)| group).collect()
}

/// `dial 2`, `dials 1 and 3`, `dials 1, 2 and 3`.
fn which(group: &[usize]) -> String {
    let numbers: Vec<String> = group.iter().map(|index| (index + 1).to_string()).collect();
    match numbers.split_last() {
        Some((last, [])) => format!("dial {last}"),
        Some((last, rest)) => format!("dials {} and {last}", rest.join(", ")),
        None => "no dial".to_owned(),
    }
}

/// Where the slider's outline reaches, forward and back, mm: what has to stay clear in the box.
pub fn slider_reach(design: &Design) -> (Point, Point) {
    let design = &tame(design);
    let (shut, free) = (
        slider_outline(design, 0.0).extent(),
        slider_outline(design, design.slider.travel).extent(),
    );
    let both = shut.union(free);
    (both.min, both.max)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tame::nonsense;
    use latchwright_solver::model::LidKind;

    fn find<'a>(all: &'a [Part], name: &str) -> &'a Part {
        all.iter()
            .find(|part| part.name.starts_with(name))
            .unwrap_or_else(|| panic!("no {name}"))
    }

    #[test]
    fn the_default_job_has_its_parts_in_order_of_making() {
        let all = parts(&Design::default());
        let names: Vec<_> = all
            .iter()
            .map(|part| (part.name.as_str(), part.count))
            .collect();
        assert_eq!(
            names,
            [
                ("front", 1),
                ("right side", 1),
                ("back", 1),
                ("left side", 1),
                ("floor", 1),
                ("plate", 1),
                ("slider", 1),
                ("keeper", 1),
                ("guide strip", 2),
                ("guide bridge", 2),
                ("knob with post, dials 1, 2 and 3", 3),
                ("disc, dials 1, 2 and 3", 3),
                ("finger knob", 1),
                ("pin, dials 1, 2 and 3", 3),
                ("butt hinge", 2),
                ("screw for the keeper, No. 4 (2.84 mm)", 2),
                ("screw with washer under each disc", 3),
            ]
        );
    }

    #[test]
    fn rough_is_bare_and_what_the_bench_adds_and_bare_is_finished_less_its_coats() {
        let mut design = Design::default();
        design.workmanship.film = 0.2;
        design.bench.rough = 3.0;
        for part in parts(&design).iter().filter(|part| part.make == Make::Wood) {
            let (bare, rough) = (part.bare.unwrap(), part.rough.unwrap());
            assert!(
                (part.finished.thickness - bare.thickness - 0.4).abs() < 1e-9,
                "{}",
                part.name
            );
            assert!(
                (part.finished.width - bare.width - 0.4).abs() < 1e-9,
                "{}",
                part.name
            );
            assert!((rough.length - bare.length - 3.0).abs() < 1e-9);
            assert!((rough.width - bare.width - 3.0).abs() < 1e-9);
            assert_eq!(rough.thickness, bare.thickness);
        }
    }

    #[test]
    fn the_length_of_a_plate_runs_along_its_grain() {
        let mut design = Design::default();
        assert_eq!(find(&parts(&design), "plate").finished.length, 220.0);
        design.plate.grain = Grain::AlongY;
        assert_eq!(find(&parts(&design), "plate").finished.length, 140.0);
    }

    #[test]
    fn dials_that_differ_have_their_own_lines() {
        let mut design = Design::default();
        design.dials[1].disc.radius = 20.0;
        let all = parts(&design);
        assert_eq!(find(&all, "disc, dials 1 and 3").count, 2);
        assert_eq!(find(&all, "disc, dial 2").finished.length, 40.0);
        assert_eq!(find(&all, "knob").count, 3);
    }

    #[test]
    fn a_printed_slider_is_printed_and_a_band_says_that_it_is_cut_off_later() {
        let mut design = Design::default();
        design.slider.material = Material::Printed;
        design.body.lid = LidKind::Band { height: 30.0 };
        let all = parts(&design);
        assert_eq!(find(&all, "slider").make, Make::Printed);
        assert!(
            find(&all, "front")
                .notes
                .iter()
                .any(|note| note.contains("cut off after"))
        );
    }

    #[test]
    fn nonsense_lists_its_parts_all_the_same() {
        for design in nonsense() {
            let words = format!("{:?}", parts(&design));
            assert!(
                !words.contains("NaN") && !words.contains(": inf"),
                "{words}"
            );
        }
    }
}
