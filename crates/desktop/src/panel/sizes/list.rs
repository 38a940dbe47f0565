//! Lists of what the maker has: one button an entry, and the entry that is chosen below them.

use egui::{Button, Id, Ui};

use super::note_ui;

/// Entries that are shown; a list of more is no list for eyes.
const SHOWN: usize = 60;

/// One entry of a list.
pub struct Entry {
    /// What its button shows.
    pub shown: String,
    /// What it is called, for those who do not see its place in the list.
    pub name: String,
}

/// A button an entry; which of them is chosen, from 0. A second click lets it go again.
pub fn pick_ui(ui: &mut Ui, list: &str, entries: &[Entry]) -> Option<usize> {
    let id = Id::unique(("list", list));
    let mut chosen = ui
        .data(|data| data.get_temp::<usize>(id))
        .filter(|index| *index < entries.len());
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = egui::vec2(4.0, 4.0);
        for (index, entry) in entries.iter().enumerate().take(SHOWN) {
            let button = Button::selectable(chosen == Some(index), entry.shown.as_str())
                .frame_when_inactive(true);
            let response = ui.add(button).accessible_name(entry.name.as_str());
            if response.clicked() {
                chosen = (chosen != Some(index)).then_some(index);
                ui.data_mut(|data| match chosen {
                    Some(index) => {
                        data.insert_temp(id, index);
                    }
                    None => data.remove::<usize>(id),
                });
            }
        }
    });
    if entries.len() > SHOWN {
        let more = entries.len() - SHOWN;
        note_ui(ui, &format!("and {more} more that are not shown here"));
    }
    chosen
}

/// Chooses the entry that will stand at `index` once the design has changed.
pub fn pick_next(ui: &Ui, list: &str, index: usize) {
    ui.data_mut(|data| data.insert_temp(Id::unique(("list", list)), index));
}

/// Lets go of the entry that is chosen.
pub fn pick_none(ui: &Ui, list: &str) {
    ui.data_mut(|data| data.remove::<usize>(Id::unique(("list", list))));
}
