//! What plate and slider are made of.

use egui::{ComboBox, Ui};
use latchwright_solver::model::{Design, Grain, Material, Sawn};
use latchwright_solver::season::{find_wood, own_wood, wood_names};

use crate::action::Action;

fn grain_name(grain: Grain) -> &'static str {
    match grain {
        Grain::AlongX => "grain left to right",
        Grain::AlongY => "grain front to hinge",
    }
}

fn sawn_name(sawn: Sawn) -> &'static str {
    match sawn {
        Sawn::Flat => "flat-sawn",
        Sawn::Quarter => "quarter-sawn",
    }
}

/// A labelled choice; `Some` when another one was taken.
pub(super) fn choice_ui<T: Copy + PartialEq>(
    ui: &mut Ui,
    name: &str,
    now: T,
    of: &[T],
    word: impl Fn(T) -> &'static str,
) -> Option<T> {
    let mut chosen = now;
    let label = ui.label(name);
    ComboBox::from_id_salt(name)
        .selected_text(word(now))
        .width(ui.available_width() - 8.0)
        .show_ui(ui, |ui| {
            for each in of {
                ui.selectable_value(&mut chosen, *each, word(*each));
            }
        })
        .response
        .labelled_by(label.id);
    (chosen != now).then_some(chosen)
}

/// The maker's own woods, then those of the table.
fn wood_ui(ui: &mut Ui, name: &str, now: &str, design: &Design) -> Option<String> {
    let own = own_wood(design, now).map(|wood| wood.name.as_str());
    let known = own.or_else(|| find_wood(now).map(|wood| wood.name));
    let mut chosen = known;
    let label = ui.label(name);
    ComboBox::from_id_salt(name)
        .selected_text(known.map_or_else(|| format!("{now} (not in the table)"), str::to_owned))
        .width(ui.available_width() - 8.0)
        .show_ui(ui, |ui| {
            for wood in &design.own_woods {
                ui.selectable_value(&mut chosen, Some(wood.name.as_str()), &wood.name);
            }
            for each in wood_names() {
                ui.selectable_value(&mut chosen, Some(each), each);
            }
        })
        .response
        .labelled_by(label.id);
    let chosen = chosen.filter(|_| chosen != known)?;
    // the table's names are written small in a file, the maker's own as they were given
    Some(match own_wood(design, chosen) {
        Some(_) => chosen.to_owned(),
        None => chosen.to_lowercase(),
    })
}

/// Wood, cut and grain of the plate.
pub fn plate_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    let plate = &design.plate;
    if let Some(wood) = wood_ui(ui, "Plate wood", &plate.wood, design) {
        wishes.push(Action::edit("plate wood", move |design| {
            design.plate.wood = wood;
        }));
    }
    if let Some(sawn) = choice_ui(
        ui,
        "Plate cut",
        plate.sawn,
        &[Sawn::Flat, Sawn::Quarter],
        sawn_name,
    ) {
        wishes.push(Action::edit("plate cut", move |design| {
            design.plate.sawn = sawn;
        }));
    }
    let both = [Grain::AlongX, Grain::AlongY];
    if let Some(grain) = choice_ui(ui, "Plate grain", plate.grain, &both, grain_name) {
        wishes.push(Action::edit("plate grain", move |design| {
            design.plate.grain = grain;
        }));
    }
}

#[derive(Clone, Copy, PartialEq)]
enum Stuff {
    Wood,
    Plywood,
    Hardboard,
    Mdf,
    Printed,
}

impl Stuff {
    const ALL: [Self; 5] = [
        Self::Wood,
        Self::Plywood,
        Self::Hardboard,
        Self::Mdf,
        Self::Printed,
    ];

    fn of(material: &Material) -> Self {
        match material {
            Material::Wood { .. } => Self::Wood,
            Material::Plywood => Self::Plywood,
            Material::Hardboard => Self::Hardboard,
            Material::Mdf => Self::Mdf,
            Material::Printed => Self::Printed,
        }
    }

    fn name(self) -> &'static str {
        match self {
            Self::Wood => "solid wood",
            Self::Plywood => "plywood",
            Self::Hardboard => "hardboard",
            Self::Mdf => "MDF",
            Self::Printed => "printed plastic",
        }
    }

    fn material(self, design: &Design) -> Material {
        match self {
            Self::Wood => Material::Wood {
                species: design.plate.wood.clone(),
                sawn: design.plate.sawn,
                grain: design.plate.grain,
            },
            Self::Plywood => Material::Plywood,
            Self::Hardboard => Material::Hardboard,
            Self::Mdf => Material::Mdf,
            Self::Printed => Material::Printed,
        }
    }
}

/// What the slider is made of; solid wood starts as the plate's.
pub fn slider_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    let stuff = Stuff::of(&design.slider.material);
    if let Some(stuff) = choice_ui(ui, "Slider material", stuff, &Stuff::ALL, Stuff::name) {
        wishes.push(Action::edit("slider material", move |design| {
            design.slider.material = stuff.material(design);
        }));
    }
    let Material::Wood {
        species,
        sawn,
        grain,
    } = &design.slider.material
    else {
        return;
    };
    let set = |species: String, sawn, grain| {
        Action::edit("slider wood", move |design: &mut Design| {
            design.slider.material = Material::Wood {
                species,
                sawn,
                grain,
            };
        })
    };
    if let Some(wood) = wood_ui(ui, "Slider wood", species, design) {
        wishes.push(set(wood, *sawn, *grain));
    }
    if let Some(cut) = choice_ui(
        ui,
        "Slider cut",
        *sawn,
        &[Sawn::Flat, Sawn::Quarter],
        sawn_name,
    ) {
        wishes.push(set(species.clone(), cut, *grain));
    }
    let both = [Grain::AlongX, Grain::AlongY];
    if let Some(grain) = choice_ui(ui, "Slider grain", *grain, &both, grain_name) {
        wishes.push(set(species.clone(), *sawn, grain));
    }
}
