//! Parts of wood and sheet.

use latchwright_drawing::slider_outline;
use latchwright_model::{Grain, Material};
use latchwright_proof::slider_body::{BRIDGE, STRIP, strips};

use super::{Lister, Part, Role, Size};
use crate::joinery::{End, Joinery, Panel, Side};

impl Lister<'_> {
    pub(super) fn side(&self, joinery: &Joinery, side: &Side) -> Part {
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

    pub(super) fn floor(&self, panel: &Panel) -> Part {
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

    pub(super) fn plate(&self, joinery: &Joinery) -> Part {
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

    pub(super) fn slider(&self) -> Part {
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

    pub(super) fn keeper(&self) -> Part {
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
    pub(super) fn guide(&self) -> [Part; 2] {
        let (slider, plate) = (&self.design.slider, &self.design.plate);
        let deep = slider.below + slider.thickness;
        let (front, back) = strips(self.design);
        let material = Material::Wood {
            species: plate.wood.clone(),
            sawn: plate.sawn,
            grain: Grain::AlongX,
        };
        let size = Size {
            length: back - front,
            width: STRIP,
            thickness: deep,
        };
        let mut strip = self.wood("guide strip", Role::GuideStrip, size, &material);
        strip.count = 2;
        strip.notes.push(format!(
            "one on each side of the slider's neck, {} clear on each side; bare and waxed",
            self.rule.say_fine(slider.guide_play)
        ));
        strip.notes.push(format!(
            "as long as guide and travel together; the front ends {} behind the keeper's edge, so that the bar does not \
             meet the back ends",
            self.rule.say_fine(front - self.design.keeper.edge)
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
}

fn turned(x: f64, y: f64, thickness: f64, along_x: bool) -> Size {
    let (length, width) = if along_x { (x, y) } else { (y, x) };
    Size {
        length,
        width,
        thickness,
    }
}
