//! Parts of wood and sheet.

use latchwright_assembly::guide::guide;
use latchwright_drawing::slider_outline;
use latchwright_model::{Grain, KeeperMake, Material};

use super::{Lister, Make, Part, PartNote, Role, Size};
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
        let mut part = self.uncoated(Role::Slider, size, &slider.material);
        if matches!(slider.material, Material::Printed) {
            (part.bare, part.rough) = (None, None);
        }
        let dials = self.design.dials.iter();
        let lowered = dials.map(|dial| dial.pin.free).reduce(f64::max);
        if let Some(free) = lowered.filter(|free| *free > 0.0) {
            part.notes.push(PartNote::FingersLowered { free });
        }
        if part.make == Make::Wood {
            part.notes.push(PartNote::OutlineOnTemplate);
        }
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
        if keeper.make == KeeperMake::Printed {
            return Self::other(Role::Keeper, Make::Printed, 1, size, "printed");
        }
        let (length, width, thickness) = latchwright_assembly::keeper::bare(self.design, self.film);
        let bare = Size {
            length,
            width,
            thickness,
        };
        let mut part = self.cut(Role::Keeper, size, bare, &material);
        part.notes.push(PartNote::BareBelow);
        part
    }

    /// Two strips beside the neck and two bridges under it.
    pub(super) fn guide(&self) -> [Part; 2] {
        let (slider, plate) = (&self.design.slider, &self.design.plate);
        let guide = guide(self.design);
        let (one, across) = (guide.strips[0].area, guide.bridges[0].area);
        let deep = guide.strips[0].height;
        let material = Material::Wood {
            species: plate.wood.clone(),
            sawn: plate.sawn,
            grain: Grain::AlongX,
        };
        let size = Size {
            length: one.height(),
            width: one.width(),
            thickness: deep,
        };
        let mut strip = self.uncoated(Role::GuideStrip, size, &material);
        strip.count = 2;
        strip.notes.push(PartNote::BesideNeck {
            play: slider.guide_play,
        });
        strip.notes.push(PartNote::AsLongAsGuideAndTravel {
            behind_keeper: one.min.y - self.design.keeper.edge,
        });
        let size = Size {
            length: across.width(),
            width: across.height(),
            thickness: guide.bridges[0].thickness,
        };
        let mut bridge = self.uncoated(Role::GuideBridge, size, &Material::Plywood);
        bridge.count = 2;
        bridge.notes.push(PartNote::CarriesSlider);
        let needed = guide.reach.through;
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
