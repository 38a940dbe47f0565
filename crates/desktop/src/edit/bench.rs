//! What a hand changes of what the maker has: bits, boards, readings, woods measured, paper, rule, printer.

use latchwright_model::{Board, Design, HoleReading, Material, OwnWood, Paper, Printer};

/// One thing that lies ready, changed. Lists count from 0.
#[derive(Debug, Clone, PartialEq)]
pub enum BenchEdit {
    /// One more bit of this diameter, mm, before the next larger one.
    AddBit(f64),
    /// One bit less.
    TakeBit(usize),
    /// One more board.
    AddBoard(Board),
    /// The wood of a board.
    BoardWood {
        /// Which board.
        board: usize,
        /// Its wood.
        wood: String,
    },
    /// One board less.
    TakeBoard(usize),
    /// Whether prints get the coats too, where they are seen.
    CoatedPrints(bool),
    /// The sheet for papers.
    Paper(Paper),
    /// The parts of an inch that the rule shows.
    Fraction(u32),
    /// One more reading of a printed hole.
    AddReading(HoleReading),
    /// One reading less.
    TakeReading(usize),
    /// The printer as the gauge measured it.
    Printer(Box<Printer>),
    /// One more wood that the maker has measured.
    AddWood,
    /// What a measured wood is called; the parts made of it go along.
    RenameWood {
        /// Which wood.
        wood: usize,
        /// Its new name.
        name: String,
    },
    /// One measured wood less.
    TakeWood(usize),
}

impl BenchEdit {
    /// What the history calls it.
    pub fn label(&self) -> String {
        match self {
            Self::AddBit(_) => "add a bit".to_owned(),
            Self::TakeBit(index) => format!("take bit {} away", index + 1),
            Self::AddBoard(_) => "add a board".to_owned(),
            Self::BoardWood { board, .. } => format!("board {} wood", board + 1),
            Self::TakeBoard(index) => format!("take board {} away", index + 1),
            Self::CoatedPrints(_) => "coats on prints".to_owned(),
            Self::Paper(_) => "sheet for papers".to_owned(),
            Self::Fraction(_) => "inches on papers".to_owned(),
            Self::AddReading(_) => "add a reading".to_owned(),
            Self::TakeReading(index) => format!("take reading {} away", index + 1),
            Self::Printer(_) => "what the gauge measured".to_owned(),
            Self::AddWood => "add a wood".to_owned(),
            Self::RenameWood { .. } => "name of a wood".to_owned(),
            Self::TakeWood(index) => format!("take wood {} away", index + 1),
        }
    }

    pub(super) fn make(self, design: &mut Design) {
        let bench = &mut design.bench;
        match self {
            Self::AddBit(bit) => {
                let at = bench.bits.iter().position(|other| *other > bit);
                let at = at.unwrap_or(bench.bits.len());
                bench.bits.insert(at, bit);
            }
            Self::TakeBit(index) => remove(&mut bench.bits, index),
            Self::AddBoard(board) => bench.boards.push(board),
            Self::BoardWood { board, wood } => {
                if let Some(board) = bench.boards.get_mut(board) {
                    board.wood = wood;
                }
            }
            Self::TakeBoard(index) => remove(&mut bench.boards, index),
            Self::CoatedPrints(coated) => bench.coated_prints = coated,
            Self::Paper(paper) => bench.paper = paper,
            Self::Fraction(fraction) => bench.fraction = fraction,
            Self::AddReading(reading) => bench.printer.holes.push(reading),
            Self::TakeReading(index) => remove(&mut bench.printer.holes, index),
            Self::Printer(printer) => bench.printer = *printer,
            Self::AddWood => {
                let name = free_name(&design.own_woods);
                design.own_woods.push(OwnWood {
                    name,
                    ..OwnWood::default()
                });
            }
            Self::RenameWood { wood, name } => rename(design, wood, &name),
            Self::TakeWood(index) => remove(&mut design.own_woods, index),
        }
    }
}

fn remove<T>(list: &mut Vec<T>, index: usize) {
    if index < list.len() {
        list.remove(index);
    }
}

/// A name that no wood of the maker's has yet.
fn free_name(woods: &[OwnWood]) -> String {
    let taken = |name: &str| woods.iter().any(|wood| wood.name == name);
    (1..=woods.len() + 1)
        .map(|number| match number {
            1 => "my wood".to_owned(),
            _ => format!("my wood {number}"),
        })
        .find(|name| !taken(name))
        .unwrap_or_default()
}

/// A measured wood gets another name, and so does every part that is made of it.
fn rename(design: &mut Design, index: usize, to: &str) {
    let Some(wood) = design.own_woods.get_mut(index) else {
        return;
    };
    let from = std::mem::replace(&mut wood.name, to.to_owned());
    let boards = design.bench.boards.iter_mut().map(|board| &mut board.wood);
    let names = [&mut design.plate.wood, &mut design.body.wood]
        .into_iter()
        .chain(boards)
        .chain(species(&mut design.slider.material))
        .chain(species(&mut design.body.floor.material));
    for name in names.filter(|name| **name == from) {
        to.clone_into(name);
    }
}

fn species(material: &mut Material) -> Option<&mut String> {
    match material {
        Material::Wood { species, .. } => Some(species),
        Material::Plywood | Material::Hardboard | Material::Mdf | Material::Printed => None,
    }
}
