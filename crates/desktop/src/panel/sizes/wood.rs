//! What plate, slider, sides and floor are made of.

use egui::{ComboBox, Ui};
use latchwright_model::wood::{find_wood, own_wood, wood_names};
use latchwright_model::{Design, Grain, KeeperMake, Material, Sawn};

use crate::action::Action;
use crate::edit::{Edit, MadeOf};

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

/// A labelled choice and why it matters; `Some` when another one was taken.
pub(super) fn choice_ui<T: Copy + PartialEq>(
    ui: &mut Ui,
    name: &str,
    why: &str,
    now: T,
    of: &[T],
    word: impl Fn(T) -> &'static str,
) -> Option<T> {
    let mut chosen = now;
    let label = ui.label(name).on_hover_text(why);
    ComboBox::from_id_salt(name)
        .selected_text(word(now))
        .width(ui.available_width() - 8.0)
        .show_ui(ui, |ui| {
            for each in of {
                ui.selectable_value(&mut chosen, *each, word(*each));
            }
        })
        .response
        .on_hover_text(why)
        .labelled_by(label.id);
    (chosen != now).then_some(chosen)
}

/// The maker's own woods, then those of the table.
fn wood_ui(ui: &mut Ui, name: &str, now: &str, design: &Design) -> Option<String> {
    species_ui(ui, name, now, design, &[], None)
}

/// A choice of `others`, the maker's own woods and those of the table.
fn species_ui(
    ui: &mut Ui,
    name: &str,
    now: &str,
    design: &Design,
    others: &[&'static str],
    other: Option<&'static str>,
) -> Option<String> {
    let own = own_wood(design, now).map(|wood| wood.name.as_str());
    let known = own
        .or_else(|| find_wood(now).map(|wood| wood.name))
        .or(other);
    let mut chosen = known;
    let label = ui.label(name).on_hover_text(SPECIES);
    ComboBox::from_id_salt(name)
        .selected_text(known.map_or_else(|| format!("{now} (not in the table)"), str::to_owned))
        .width(ui.available_width() - 8.0)
        .show_ui(ui, |ui| {
            for wood in &design.own_woods {
                ui.selectable_value(&mut chosen, Some(wood.name.as_str()), &wood.name);
            }
            for each in others.iter().copied().chain(wood_names()) {
                ui.selectable_value(&mut chosen, Some(each), each);
            }
        })
        .response
        .on_hover_text(SPECIES)
        .labelled_by(label.id);
    let chosen = chosen.filter(|_| chosen != known)?;
    // the table's names are written small in a file, the maker's own as they were given
    Some(match own_wood(design, chosen) {
        Some(_) => chosen.to_owned(),
        None => chosen.to_lowercase(),
    })
}

const CUT: &str = "A flat-sawn board moves further across its width than a quarter-sawn one";
const FIBRES: &str = "Wood hardly moves along its grain; across it, it does all year";
const SPECIES: &str = "The table says how far it moves; your own measured woods come first";
const STUFF: &str = "Sheets and plastic move little with damp; solid wood by its species";
const SAWN: [Sawn; 2] = [Sawn::Flat, Sawn::Quarter];
const GRAIN: [Grain; 2] = [Grain::AlongX, Grain::AlongY];

/// Wood, cut and grain of the plate.
pub fn plate_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    let plate = &design.plate;
    if let Some(wood) = wood_ui(ui, "Plate wood", &plate.wood, design) {
        wishes.push(Action::Edit(Edit::PlateWood(wood)));
    }
    if let Some(sawn) = choice_ui(ui, "Plate cut", CUT, plate.sawn, &SAWN, sawn_name) {
        wishes.push(Action::Edit(Edit::PlateCut(sawn)));
    }
    if let Some(grain) = choice_ui(ui, "Plate grain", FIBRES, plate.grain, &GRAIN, grain_name) {
        wishes.push(Action::Edit(Edit::PlateGrain(grain)));
    }
}

/// Wood and cut of the sides; their grain runs along their length.
pub fn sides_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    if let Some(wood) = wood_ui(ui, "Side wood", &design.body.wood, design) {
        wishes.push(Action::Edit(Edit::SideWood(wood)));
    }
    if let Some(sawn) = choice_ui(ui, "Side cut", CUT, design.body.sawn, &SAWN, sawn_name) {
        wishes.push(Action::Edit(Edit::SideCut(sawn)));
    }
}

/// Wood of a board, or one of the sheets that boards come as too.
pub fn stock_ui(ui: &mut Ui, name: &str, now: &str, design: &Design) -> Option<String> {
    const SHEETS: [&str; 3] = ["plywood", "hardboard", "mdf"];
    let sheet = SHEETS.into_iter().find(|sheet| *sheet == now);
    species_ui(ui, name, now, design, &SHEETS, sheet)
}

/// What the slider is made of.
pub fn slider_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    material_ui(ui, MadeOf::Slider, design, wishes);
}

/// What the keeper is made of.
pub fn keeper_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    let makes = [KeeperMake::Wood, KeeperMake::Printed];
    let name = |make| match make {
        KeeperMake::Wood => "of wood",
        KeeperMake::Printed => "printed",
    };
    let why = "Of the sides' wood, its grain along the front, or a print: there is only one";
    if let Some(make) = choice_ui(ui, "Keeper", why, design.keeper.make, &makes, name) {
        wishes.push(Action::Edit(Edit::KeeperMake(make)));
    }
}

/// What the floor is made of.
pub fn floor_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    material_ui(ui, MadeOf::Floor, design, wishes);
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

/// What a part is made of; solid wood starts as the plate's.
fn material_ui(ui: &mut Ui, part: MadeOf, design: &Design, wishes: &mut Vec<Action>) {
    let title = |what: &str| format!("{} {what}", part.name());
    let material = part.material(design);
    let (name, stuff) = (title("material"), Stuff::of(material));
    if let Some(stuff) = choice_ui(ui, &name, STUFF, stuff, &Stuff::ALL, Stuff::name) {
        let material = stuff.material(design);
        wishes.push(Action::Edit(Edit::Material(part, material)));
    }
    let Material::Wood {
        species,
        sawn,
        grain,
    } = material
    else {
        return;
    };
    let set = |species: String, sawn, grain| {
        let wood = Material::Wood {
            species,
            sawn,
            grain,
        };
        Action::Edit(Edit::SolidWood(part, wood))
    };
    if let Some(wood) = wood_ui(ui, &title("wood"), species, design) {
        wishes.push(set(wood, *sawn, *grain));
    }
    if let Some(cut) = choice_ui(ui, &title("cut"), CUT, *sawn, &SAWN, sawn_name) {
        wishes.push(set(species.clone(), cut, *grain));
    }
    if let Some(grain) = choice_ui(ui, &title("grain"), FIBRES, *grain, &GRAIN, grain_name) {
        wishes.push(set(species.clone(), *sawn, grain));
    }
}
