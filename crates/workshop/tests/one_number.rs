//! One feature has one number: on the cut list, on its template, in the order of work and in the assembly.

use latchwright_assembly::dial::{disc_screw, washer};
use latchwright_assembly::finger_knob::finger_knob;
use latchwright_assembly::guide::guide;
use latchwright_assembly::hinge::hinge_screws;
use latchwright_assembly::keeper::{keeper_screws, pilot_depth};
use latchwright_assembly::slider_body::{SliderBody, rabbet};
use latchwright_assembly::whole::{Assembly, PartId};
use latchwright_drawing::Shape;
use latchwright_model::{Design, KeeperMake, LidKind, Material, Units};
use latchwright_workshop::inch::Rule;
use latchwright_workshop::steps::{Value, WorkStep, steps};
use latchwright_workshop::{
    HoleKind, Make, Part, Role, ScrewUse, Template, TemplateKind, holes, parts, templates,
};

fn designs() -> Vec<Design> {
    let with = |change: fn(&mut Design)| {
        let mut design = Design::default();
        change(&mut design);
        design
    };
    vec![
        Design::default(),
        with(|design| design.body.lid = LidKind::Band { height: 30.0 }),
        with(|design| {
            design.slider.material = Material::Printed;
            design.keeper.make = KeeperMake::Printed;
        }),
        with(|design| design.units = Units::Inch),
    ]
}

/// What the order of work sets in the step of this title under a name that ends so, mm; `None` where it has none.
fn set(all: &[WorkStep], title: &str, name: &str) -> Option<f64> {
    let step = all.iter().find(|step| step.title.contains(title))?;
    let setting = step
        .settings
        .iter()
        .find(|setting| setting.name.ends_with(name))?;
    match setting.value {
        Value::Mm(mm) | Value::Bare(mm) | Value::Bit(mm) | Value::Screw(mm) => Some(mm),
        _ => None,
    }
}

fn near(one: Option<f64>, other: f64, what: &str) {
    let one = one.unwrap_or_else(|| panic!("{what} is missing"));
    assert!((one - other).abs() < 1e-4, "{what}: {one} against {other}");
}

fn part(all: &[Part], is: impl Fn(&Role) -> bool) -> Option<&Part> {
    all.iter().find(|part| is(&part.role))
}

fn template(design: &Design, kind: TemplateKind) -> Option<Template> {
    templates(design)
        .all
        .into_iter()
        .find(|template| template.kind == kind)
}

fn said(template: &Template) -> String {
    let items = template.drawing.items.iter();
    let words = items.filter_map(|item| match &item.shape {
        Shape::Text(text) => Some(text.text.as_str()),
        _ => None,
    });
    words.collect::<Vec<_>>().join("\n")
}

#[test]
fn a_screw_has_one_length_on_cut_list_and_order_of_work() {
    for design in designs() {
        let (list, work) = (parts(&design), steps(&design));
        let listed = |held: &ScrewUse| {
            let found = part(&list, |role| *role == Role::Screw(held.clone()));
            found.map(|part| (part.finished.length, part.count))
        };
        let leaf = hinge_screws(&design);
        let knob = finger_knob(&design);
        let disc = disc_screw(&design, &design.dials[0], 0.0);
        let disc_name = ScrewUse::Disc(vec![0, 1, 2]);
        for (held, length, count, title, name) in [
            (
                ScrewUse::Keeper,
                keeper_screws(&design).length,
                2,
                "Fit the keeper",
                "screw",
            ),
            (
                ScrewUse::Guide,
                guide(&design).screw,
                4,
                "Set the guide",
                "guide: screw",
            ),
            (
                ScrewUse::Guide,
                guide(&design).screw,
                4,
                "Assemble",
                "into the plate",
            ),
            (
                ScrewUse::FingerKnob,
                knob.screw,
                1,
                "Make the slider",
                "from below: screw",
            ),
            (
                ScrewUse::HingeInLid,
                leaf.lid.length,
                6,
                "Let in the hinges",
                "lid: screw",
            ),
            (
                ScrewUse::HingeInBack,
                leaf.back.length,
                6,
                "Let in the hinges",
                "back: screw",
            ),
            (
                disc_name,
                disc.length,
                3,
                "Set the combination",
                "dials 1, 2 and 3",
            ),
        ] {
            let length = length.unwrap_or_else(|| panic!("{held:?} has a screw"));
            let (of_list, many) = listed(&held).unwrap_or_else(|| panic!("{held:?} is listed"));
            assert_eq!((of_list, many), (length, count), "{held:?}");
            if title == "Set the combination" {
                let step = work.iter().find(|step| step.title.contains(title)).unwrap();
                let screws = step
                    .settings
                    .iter()
                    .filter(|setting| setting.value == Value::Screw(length));
                assert_eq!(screws.count(), 1);
            } else {
                near(set(&work, title, name), length, name);
            }
        }
    }
}

#[test]
fn a_pilot_is_as_deep_in_the_order_of_work_as_on_list_of_holes_and_template() {
    for design in designs() {
        let work = steps(&design);
        let rule = Rule::of(&design);
        let found = holes(&design).holes;
        let pilots: Vec<f64> = found
            .iter()
            .filter(|hole| matches!(hole.kind, HoleKind::GuideScrew(..)))
            .map(|hole| match hole.steps[0].depth {
                latchwright_workshop::Depth::Blind(deep) => deep,
                latchwright_workshop::Depth::Through(_) => panic!("a pilot is blind"),
            })
            .collect();
        assert_eq!(pilots.len(), 4);
        for deep in pilots {
            near(
                set(&work, "Set the guide", "depth of the pilot hole"),
                deep,
                "guide",
            );
            let back = template(&design, TemplateKind::PlateBack).unwrap();
            assert!(said(&back).contains(&format!("{} deep", rule.say_exactly(deep))));
        }
        let deep = pilot_depth(&design).unwrap();
        near(
            set(&work, "Fit the keeper", "depth of the pilot hole"),
            deep,
            "keeper",
        );
        if design.body.lid == LidKind::Plate {
            let front = template(
                &design,
                TemplateKind::Side(latchwright_workshop::joinery::SidePlace::Front),
            );
            assert!(said(&front.unwrap()).contains(&format!("{} deep", rule.say_exactly(deep))));
        }
    }
}

#[test]
fn the_rabbet_has_one_length_and_one_place() {
    for design in designs() {
        let (work, film) = (steps(&design), design.workmanship.film);
        let area = rabbet(&design).unwrap();
        let half = design.plate.width / 2.0;
        near(
            set(&work, "rabbet", "length along the front"),
            area.width(),
            "length",
        );
        let back = template(&design, TemplateKind::PlateBack).unwrap();
        let drawn = back.flat.marks.iter().any(|mark| {
            let extent = mark.extent();
            // the back is mirrored
            (extent.width() - area.width()).abs() < 1e-5
                && (extent.min.x - (half - area.max.x)).abs() < 1e-5
                && (extent.max.y - area.max.y).abs() < 1e-5
        });
        assert!(drawn);
        let left = set(
            &work,
            "rabbet",
            "left end, from the plate's left edge seen from outside",
        );
        near(left, half + area.min.x - film, "left end");
        near(
            set(&work, "rabbet", "fence, from the plate's front edge"),
            area.max.y - film,
            "fence",
        );
    }
}

#[test]
fn strips_and_bridges_are_where_template_and_order_of_work_have_them() {
    for design in designs() {
        let (work, list, film) = (steps(&design), parts(&design), design.workmanship.film);
        let guide = guide(&design);
        let [left, right] = guide.strips.map(|strip| strip.area);
        let half = design.plate.width / 2.0;
        let own = |name: &str| set(&work, "Set the guide", name);
        near(
            own("from the plate's left edge"),
            half + left.min.x - film,
            "left strip",
        );
        near(
            own("from the plate's right edge"),
            half - right.max.x - film,
            "right strip",
        );
        near(
            own("strips: front ends from the plate's front edge"),
            left.min.y - film,
            "front",
        );
        let strip = part(&list, |role| *role == Role::GuideStrip).unwrap();
        near(
            own("guide and travel together"),
            strip.finished.length,
            "length",
        );
        assert_eq!(strip.bare, Some(strip.finished));
        let back = template(&design, TemplateKind::PlateBack).unwrap();
        for strip in guide.strips.map(|strip| strip.area) {
            let drawn = back.flat.marks.iter().any(|mark| {
                let extent = mark.extent();
                (extent.min.x - (half - strip.max.x)).abs() < 1e-5
                    && (extent.max.x - (half - strip.min.x)).abs() < 1e-5
                    && (extent.min.y - strip.min.y).abs() < 1e-5
            });
            assert!(drawn);
        }
    }
}

#[test]
fn pins_washers_fingers_and_the_finger_knob_have_one_size() {
    for design in designs() {
        let (work, list) = (steps(&design), parts(&design));
        let rule = Rule::of(&design);
        let dial = &design.dials[0];
        let pin = part(&list, |role| matches!(role, Role::Pin(_))).unwrap();
        near(
            set(
                &work,
                "Make the slider",
                "length of the pin, dials 1, 2 and 3",
            ),
            pin.finished.length,
            "pin",
        );
        assert_eq!(pin.finished.length, dial.pin.height);
        let ring = part(&list, |role| matches!(role, Role::Washer(_))).unwrap();
        let thick = washer(&design, dial).unwrap().thickness;
        assert_eq!(ring.finished.thickness, thick);
        near(
            set(&work, "Assemble", "plate and disc, dials 1, 2 and 3"),
            thick,
            "washer",
        );
        let knob = part(&list, |role| *role == Role::FingerKnob).unwrap();
        assert_eq!(knob.finished.thickness, finger_knob(&design).shank_length);
        let Some(slider) = template(&design, TemplateKind::Slider) else {
            let printed = part(&list, |role| *role == Role::Slider).unwrap();
            assert_eq!(printed.make, Make::Printed);
            continue;
        };
        let body = SliderBody::of(&design);
        let deep = body.fingers(&design)[0].top - design.slider.below;
        near(
            set(&work, "Make the slider", "lowered from the upper face"),
            deep,
            "fingers",
        );
        near(
            set(&work, "Make the slider", "from the tab's tip"),
            body.bar_max.y - body.tip,
            "begin",
        );
        let words = said(&slider);
        let socket = finger_knob(&design);
        for mm in [deep, socket.socket_depth] {
            let wanted = format!("{} deep", rule.say_exactly(mm));
            assert!(words.contains(&wanted), "{wanted} in {words}");
        }
        near(
            set(&work, "Make the slider", "socket: depth stop"),
            socket.socket_depth,
            "socket",
        );
    }
}

#[test]
fn plate_keeper_and_small_parts_are_cut_to_the_bare_sizes_of_the_cut_list() {
    for design in designs() {
        let (work, list) = (steps(&design), parts(&design));
        let mut seen = 0;
        for part in &list {
            let own = match part.role {
                Role::Plate => design.body.lid == LidKind::Plate,
                Role::Keeper | Role::GuideStrip | Role::GuideBridge => part.make == Make::Wood,
                _ => false,
            };
            if !own {
                continue;
            }
            seen += 1;
            let bare = part.bare.unwrap();
            let name = part.role.name();
            for (way, mm) in [
                ("length", bare.length),
                ("width", bare.width),
                ("thickness", bare.thickness),
            ] {
                near(
                    set(&work, "small parts", &format!("{name}: {way}")),
                    mm,
                    &name,
                );
            }
        }
        assert!(seen >= 3, "{seen}");
    }
}

#[test]
fn the_cut_list_has_every_part_of_the_assembly_and_every_screw() {
    for design in designs() {
        let (all, list) = (Assembly::of(&design), parts(&design));
        assert_eq!(all.loose(), Vec::new());
        let listed = |of: &dyn Fn(&Role) -> bool| -> u32 {
            let rows = list.iter().filter(|row| of(&row.role));
            rows.map(|row| row.count).sum()
        };
        let there = |of: &dyn Fn(&PartId) -> bool| all.parts.iter().filter(|part| of(part)).count();
        let kinds: [(u32, usize); 12] = [
            (
                listed(&|role| role.side().is_some()),
                there(&|part| matches!(part, PartId::Side(_))),
            ),
            (
                listed(&|role| *role == Role::Floor),
                there(&|part| *part == PartId::Floor),
            ),
            (
                listed(&|role| *role == Role::Plate),
                there(&|part| *part == PartId::Plate),
            ),
            (
                listed(&|role| *role == Role::Slider),
                there(&|part| *part == PartId::Slider),
            ),
            (
                listed(&|role| *role == Role::Keeper),
                there(&|part| *part == PartId::Keeper),
            ),
            (
                listed(&|role| *role == Role::GuideStrip),
                there(&|part| matches!(part, PartId::Strip(_))),
            ),
            (
                listed(&|role| *role == Role::GuideBridge),
                there(&|part| matches!(part, PartId::Bridge(_))),
            ),
            (
                listed(&|role| matches!(role, Role::Disc(_))),
                there(&|part| matches!(part, PartId::Disc(_))),
            ),
            (
                listed(&|role| matches!(role, Role::Knob(_))),
                there(&|part| matches!(part, PartId::Knob(_))),
            ),
            (
                listed(&|role| matches!(role, Role::Washer(_))),
                there(&|part| matches!(part, PartId::Washer(_))),
            ),
            (
                listed(&|role| *role == Role::FingerKnob),
                there(&|part| *part == PartId::FingerKnob),
            ),
            (
                listed(&|role| *role == Role::Hinge),
                there(&|part| matches!(part, PartId::Hinge(_))),
            ),
        ];
        for (number, (listed, there)) in kinds.into_iter().enumerate() {
            assert_eq!(listed as usize, there, "kind {number}");
        }
        let screws = listed(&|role| matches!(role, Role::Screw(_)));
        assert_eq!(screws, all.screws());
    }
}
