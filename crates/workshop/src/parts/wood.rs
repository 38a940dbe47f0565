//! Parts of wood and sheet.

use latchwright_drawing::slider_outline;
use latchwright_model::{Grain, Material};
use latchwright_proof::slider_body::{BRIDGE, STRIP, strips};

use super::{Lister, Part, PartNote, Role, Size};
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
        let mut part = self.wood(Role::Side(side.place), size, &material);
        // The length follows from the joint, not from coats on its ends.
        let rough = self.design.bench.rough.max(0.0);
        if let (Some(bare), Some(sawn)) = (&mut part.bare, &mut part.rough) {
            bare.length = side.outside.bare;
            sawn.length = side.outside.bare + rough;
        }
        part.notes.push(match side.ends {
            End::Mitred => PartNote::EndsMitred {
                long_point: side.outside.bare,
                short_point: side.inside.bare,
            },
            End::Square => PartNote::EndsSquare,
            End::Rabbeted { width, depth } => PartNote::EndsRabbeted { width, depth },
        });
        if joinery.lid.is_some() {
            part.notes.push(PartNote::LidCutOffLater);
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
        let mut part = self.wood(Role::Floor, size, &panel.material);
        part.notes.push(PartNote::ClearInGroove {
            x: panel.gap_x,
            y: panel.gap_y,
        });
        part.notes.push(PartNote::GluedAtTwoMiddles);
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
        let mut part = self.wood(Role::Plate, size, &material);
        part.notes.push(match &joinery.top {
            Some(_) => PartNote::LooseInGroove,
            None => PartNote::IsTheLid,
        });
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
        let mut part = self.wood(Role::Slider, size, &slider.material);
        if matches!(slider.material, Material::Printed) {
            (part.bare, part.rough) = (None, None);
        }
        part.notes.push(PartNote::OutlineOnTemplate);
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
        self.wood(Role::Keeper, size, &material)
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
        let mut strip = self.wood(Role::GuideStrip, size, &material);
        strip.count = 2;
        strip.notes.push(PartNote::BesideNeck {
            play: slider.guide_play,
        });
        strip.notes.push(PartNote::AsLongAsGuideAndTravel {
            behind_keeper: front - self.design.keeper.edge,
        });
        let size = Size {
            length: self.design.tab.width + 2.0 * (slider.guide_play + STRIP),
            width: STRIP,
            thickness: BRIDGE,
        };
        let mut bridge = self.wood(Role::GuideBridge, size, &Material::Plywood);
        bridge.count = 2;
        bridge.notes.push(PartNote::CarriesSlider);
        let needed = deep + BRIDGE;
        if needed > plate.room {
            bridge.notes.push(PartNote::HigherThanRoom {
                room: plate.room,
                needed,
            });
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
