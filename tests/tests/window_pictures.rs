//! One small picture of every stage in daylight and on slate, as it was when it was last looked at.
//!
//! A picture that differs is written beside the one that is kept. Look at both; where the new one is
//! meant, run the test with `UPDATE_SNAPSHOTS=1` and keep what it writes in the same commit.

use egui::Theme;
use egui_kittest::{SnapshotOptions, SnapshotResults, try_image_snapshot_options};
use image::imageops::{FilterType, resize};
use latchwright_desktop::stage::Stage;
use latchwright_session::Session;
use latchwright_tests::window::{go, picture, smallest, wait_for};

/// What stands on a stage only when all of it is there.
const fn last_to_come(stage: Stage) -> Option<&'static str> {
    match stage {
        Stage::LayOut | Stage::Try | Stage::Prove => None,
        Stage::Make => Some("Templates as printed"),
        Stage::Give => Some("The card as it will be printed"),
    }
}

#[test]
fn every_stage_looks_as_it_did_in_daylight_and_on_slate() {
    let options = SnapshotOptions::new()
        .output_path(concat!(env!("CARGO_MANIFEST_DIR"), "/pictures"))
        .max_failed_pixels(6);
    let mut results = SnapshotResults::new();
    for (theme, light) in [(Theme::Light, "daylight"), (Theme::Dark, "slate")] {
        let mut window = smallest(Session::demo("tea-box").expect("a demo"));
        window.ctx.set_theme(theme);
        for stage in Stage::ALL {
            go(&mut window, stage);
            window.hover_at(egui::pos2(1.0, 1.0));
            if let Some(last) = last_to_come(stage) {
                wait_for(&mut window, last);
            }
            let whole = picture(&mut window);
            let small = resize(&whole, 512, 350, FilterType::Triangle);
            let name = format!("{} {light}", stage.name().to_lowercase()).replace(' ', "-");
            results.add(try_image_snapshot_options(&small, name, &options));
        }
    }
}
