//! Writes every view of the default latch as SVG into a folder, to be looked at.
//!
//! `cargo run -p latchwright-drawing --example views -- FOLDER`

use std::path::Path;

use latchwright_drawing::{
    ContactMark, Drawing, PICTURES, Palette, Pictogram, PlanOptions, dial_face, lid_card,
    pictogram, plan, section, svg,
};
use latchwright_geometry::Point;
use latchwright_model::Pose;
use latchwright_model::{Design, Labels};
use latchwright_proof::StopsAt;

fn main() -> std::io::Result<()> {
    let folder = std::env::args().nth(1).unwrap_or_else(|| ".".to_owned());
    let folder = Path::new(&folder);
    std::fs::create_dir_all(folder)?;
    for (name, drawing) in views() {
        for (theme, palette) in [
            ("light", Palette::LIGHT),
            ("dark", Palette::DARK),
            ("print", Palette::PRINT),
        ] {
            std::fs::write(
                folder.join(format!("{name}-{theme}.svg")),
                svg(&drawing, &palette),
            )?;
        }
    }
    Ok(())
}

fn views() -> Vec<(String, Drawing)> {
    let design = Design::default();
    let shut = Pose::at_combination(&design);
    let mut stopped = Pose::at_marks(&design, &[3, 5, 1]);
    stopped.travel = 3.0;
    let free = Pose {
        travel: design.slider.travel,
        ..shut.clone()
    };
    let mut views = Vec::new();
    for veil in [0.0, 0.5, 1.0] {
        let options = PlanOptions {
            veil,
            passing: vec![true; 3],
            ..PlanOptions::default()
        };
        views.push((format!("plan-veil-{veil}"), plan(&design, &shut, &options)));
    }
    let contact = ContactMark {
        dial: 1,
        at: Point::new(0.0, -19.0),
        stops_at: StopsAt::Rim,
        label: "3.0 mm, then no further".to_owned(),
    };
    let options = PlanOptions {
        contact: Some(contact),
        passing: vec![true, false, true],
        focus: Some(1),
        show_dimensions: true,
        ..PlanOptions::default()
    };
    views.push(("plan-contact".to_owned(), plan(&design, &stopped, &options)));
    let passing = PlanOptions {
        passing: vec![true; 3],
        ..PlanOptions::default()
    };
    views.push(("plan-free".to_owned(), plan(&design, &free, &passing)));
    views.push(("section-shut".to_owned(), section(&design, &shut, 1, None)));
    views.push((
        "section-stopped".to_owned(),
        section(&design, &stopped, 1, None),
    ));
    views.push(("section-free".to_owned(), section(&design, &free, 1, None)));
    views.push((
        "card-shown".to_owned(),
        lid_card(&design, &design.combination, true),
    ));
    views.push((
        "card-hidden".to_owned(),
        lid_card(&design, &design.combination, false),
    ));
    for (index, step) in Pictogram::ALL.into_iter().enumerate() {
        views.push((format!("step-{index}"), pictogram(step)));
    }
    views.extend(dial_views());
    views
}

fn dial_views() -> Vec<(String, Drawing)> {
    let names = PICTURES.map(str::to_owned).to_vec();
    let labelled = [
        ("pictures", 12, Labels::Pictures(names)),
        ("36", 36, Labels::Digits),
        ("360", 360, Labels::Digits),
        (
            "words",
            6,
            Labels::Words(
                ["oak", "ash", "walnut", "cherry", "beech", "maple"]
                    .map(str::to_owned)
                    .to_vec(),
            ),
        ),
    ];
    let mut views = Vec::new();
    for (name, positions, labels) in labelled {
        let mut design = Design::default();
        for dial in &mut design.dials {
            dial.positions = positions;
            dial.labels = labels.clone();
        }
        views.push((format!("dial-{name}"), dial_face(&design, 0, 60.0)));
        views.push((format!("card-{name}"), lid_card(&design, &[2, 4, 1], true)));
    }
    views
}
