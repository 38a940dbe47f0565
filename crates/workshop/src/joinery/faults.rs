//! What cannot be built, or needs a second look: each with figures and a remedy.

use latchwright_drawing::slider_outline;
use latchwright_model::Design;
use latchwright_model::{Place, Severity};

use super::{Joinery, LEAST_HOLD, Panel, front_face};
use crate::fault::Fault;
use crate::inch::Rule;

/// A groove may take this share of a side's thickness: common practice, no source.
const DEEPEST: f64 = 2.0 / 3.0;
/// Wood that should stand beside a groove, notch, cut or screw, mm: common practice, no source.
const WALL: f64 = 3.0;
/// How far the plate may be off the outside before it is said, mm.
const MATCHES: f64 = 0.1;
/// A plate that stands out further than this is worth a look, mm.
const FAR_OUT: f64 = 15.0;

/// Collects faults in the maker's unit.
struct List<'a> {
    rule: Rule,
    design: &'a Design,
    found: Vec<Fault>,
}

pub(super) fn all(design: &Design, joinery: &Joinery) -> Vec<Fault> {
    let mut list = List {
        rule: Rule::of(design),
        design,
        found: Vec::new(),
    };
    if list.has_size(joinery) {
        list.grooves();
        list.panel(&joinery.floor);
        match (&joinery.top, joinery.overhang) {
            (Some(top), _) => {
                list.panel(top);
                list.top_fits(top);
            }
            (None, Some(_)) => list.plate_covers(joinery),
            _ => {}
        }
        list.cut(joinery);
        list.hinges(joinery);
        list.keeper(joinery);
        list.room_under_the_lid(joinery);
    }
    list.found
}

impl List<'_> {
    fn say(&self, mm: f64) -> String {
        self.rule.say(mm)
    }

    fn add(
        &mut self,
        severity: Severity,
        code: &'static str,
        place: Place,
        words: (String, String),
    ) {
        self.found.push(Fault {
            severity,
            code,
            place,
            message: words.0,
            remedy: words.1,
        });
    }

    fn error(&mut self, code: &'static str, place: Place, message: String, remedy: String) {
        self.add(Severity::Error, code, place, (message, remedy));
    }

    fn notice(&mut self, code: &'static str, place: Place, message: String, remedy: String) {
        self.add(Severity::Notice, code, place, (message, remedy));
    }

    /// Whether there is a box at all; the first size that is none is named.
    fn has_size(&mut self, joinery: &Joinery) -> bool {
        let film = self.design.workmanship.film.max(0.0);
        let thickness = joinery.thickness;
        let sizes = [
            ("the sides' thickness", Place::Body, thickness.bare),
            ("the room's width", Place::Inside, joinery.inside.width),
            ("the room's depth", Place::Inside, joinery.inside.depth),
            ("the room's height", Place::Inside, joinery.inside.height),
            (
                "the floor's thickness",
                Place::Body,
                joinery.floor.thickness.bare,
            ),
            ("the sides' height", Place::Body, joinery.height.bare),
        ];
        for (name, place, size) in sizes {
            if size <= 0.0 {
                let (size, coats) = (self.say(size), self.rule.say_fine(film));
                self.error(
                    "nothing-left",
                    place,
                    format!("{name} is {size} once coats of {coats} a face are taken off: nothing is left to cut"),
                    "give it a size above nought and above its coats".to_owned(),
                );
                return false;
            }
        }
        true
    }

    fn grooves(&mut self) {
        let body = &self.design.body;
        let most = body.thickness * DEEPEST;
        if body.groove > most + 1e-9 {
            let (groove, thick, most) = (
                self.say(body.groove),
                self.say(body.thickness),
                self.say(most),
            );
            self.error(
                "groove-too-deep",
                Place::Body,
                format!(
                    "a groove of {groove} in sides of {thick} leaves less than a third of them"
                ),
                format!("make the groove at most {most} deep, or take thicker sides"),
            );
        }
        if body.foot < WALL {
            let (foot, least) = (self.say(body.foot), self.say(WALL));
            self.add(
                if body.foot <= 0.0 {
                    Severity::Error
                } else {
                    Severity::Notice
                },
                "thin-under-floor",
                Place::Body,
                (
                    format!(
                        "only {foot} of wood stays under the floor's groove and breaks out easily"
                    ),
                    format!("raise the floor to at least {least} above the lower edge"),
                ),
            );
        }
    }

    fn panel(&mut self, panel: &Panel) {
        let (name, place) = (panel.name, panel_place(panel));
        if panel.width.bare <= 0.0 || panel.depth.bare <= 0.0 {
            let (x, y) = (
                self.say(panel.width.finished),
                self.say(panel.depth.finished),
            );
            self.error(
                "panel-negative",
                place,
                format!("the {name} comes out as {x} × {y}: there is none"),
                "make the room larger or the groove deeper".to_owned(),
            );
            return;
        }
        let least = panel.holds.0.min(panel.holds.1);
        if least < LEAST_HOLD {
            let need = self.design.body.groove + LEAST_HOLD - least;
            let (least, wanted, need) = (self.say(least), self.say(LEAST_HOLD), self.say(need));
            self.error(
                "panel-falls-out",
                place,
                format!("at its driest the {name} stands only {least} in its groove, {wanted} are wanted"),
                format!("cut the grooves {need} deep, or take plywood or a wood that moves less"),
            );
        }
        if panel.guessed {
            self.notice(
                "panel-wood-unknown",
                place,
                format!(
                    "the {name}'s wood is in no table, so one that moves more than any was taken"
                ),
                "add its coefficients to your own woods".to_owned(),
            );
        }
    }

    fn top_fits(&mut self, top: &Panel) {
        for (axis, gap, grows) in [("x", top.gap_x, top.grows.0), ("y", top.gap_y, top.grows.1)] {
            let short = grows / 2.0 - gap;
            if short > 1e-9 {
                let (gap, grows, less) = (
                    self.say(gap),
                    self.rule.say_fine(grows),
                    self.say(2.0 * short),
                );
                self.error(
                    "plate-jams",
                    Place::Plate,
                    format!("the plate has {gap} on each side in its groove along {axis} and grows by {grows}: it would burst the corners"),
                    format!("make the plate {less} smaller along {axis}, or the groove deeper"),
                );
            }
        }
    }

    /// The plate on the sides: nowhere short, not far out.
    fn plate_covers(&mut self, joinery: &Joinery) {
        let (plate, outside) = (&self.design.plate, &joinery.outside);
        for (axis, has, wants) in [
            ("width", plate.width, outside.width),
            ("depth", plate.depth, outside.depth),
        ] {
            let over = has - wants;
            let (has, wants, by) = (self.say(has), self.say(wants), self.say(over.abs()));
            if over < -MATCHES {
                self.error(
                    "plate-too-small",
                    Place::Plate,
                    format!("the plate's {axis} is {has}, the box outside is {wants}: {by} short"),
                    format!("make the plate's {axis} at least {wants}, or the room {by} smaller"),
                );
            } else if over > 2.0 * FAR_OUT {
                self.notice(
                    "plate-far-out",
                    Place::Plate,
                    format!("the plate's {axis} is {has}, {by} more than the box outside"),
                    "make sure that it is meant to stand out so far".to_owned(),
                );
            }
        }
    }

    fn cut(&mut self, joinery: &Joinery) {
        let Some(cut) = joinery.lid else { return };
        let body = &self.design.body;
        let taken = body.foot + self.design.plate.thickness;
        if cut.lid_height < taken + WALL {
            let (height, need) = (self.say(cut.lid_height), self.say(taken + WALL));
            self.error(
                "band-cuts-the-groove",
                Place::Body,
                format!("a band of {height} would be cut through the plate's groove"),
                format!("make the band at least {need} high"),
            );
        }
        let floor = body.foot + body.floor.thickness + WALL;
        if cut.box_height < floor {
            let most = cut.lid_height - (floor - cut.box_height);
            let (left, most) = (self.say(cut.box_height), self.say(most));
            self.error(
                "band-too-high",
                Place::Body,
                format!("the band leaves {left} of the box, less than floor and groove take"),
                format!("make the band at most {most} high"),
            );
        }
        if self.design.bench.kerf <= 0.0 {
            self.notice(
                "no-kerf",
                Place::Bench,
                "the saw's cut is nought, so nothing is reckoned for the lid's cut".to_owned(),
                "measure a cut of your saw and give its width".to_owned(),
            );
        }
    }

    fn hinges(&mut self, joinery: &Joinery) {
        let (body, outside) = (&self.design.body, joinery.outside.width);
        let [left, right] = joinery.hinges;
        if left.to > right.from || left.from < 0.0 {
            let (length, inset) = (self.say(body.hinge.length), self.say(body.hinge.inset));
            let (edge, most) = (
                self.say(outside),
                self.say((outside / 2.0 - body.hinge.inset).max(0.0)),
            );
            self.error(
                "hinges-do-not-fit",
                Place::Body,
                format!("two hinges of {length} set in by {inset} do not fit on a back of {edge}"),
                format!("take hinges of at most {most}, or set them in less"),
            );
        }
        let most = joinery.thickness.finished - WALL;
        if body.hinge.leaf > most {
            let (leaf, thick, most) = (
                self.say(body.hinge.leaf),
                self.say(body.thickness),
                self.say(most),
            );
            self.add(
                if body.hinge.leaf > body.thickness {
                    Severity::Error
                } else {
                    Severity::Notice
                },
                "hinge-too-wide",
                Place::Body,
                (
                    format!(
                        "a leaf of {leaf} on an edge of {thick} leaves too little wood before it"
                    ),
                    format!("take hinges with leaves of at most {most}"),
                ),
            );
        }
        let lid = joinery
            .lid
            .map_or(self.design.plate.thickness, |cut| cut.lid_height);
        if body.hinge.thickness > lid / 2.0 {
            let (deep, lid) = (self.say(body.hinge.thickness), self.say(lid));
            self.error(
                "hinge-too-thick",
                Place::Body,
                format!(
                    "a leaf {deep} thick would be let in more than half through a lid of {lid}"
                ),
                "take thinner hinges".to_owned(),
            );
        }
    }

    fn keeper(&mut self, joinery: &Joinery) {
        let seat = joinery.keeper;
        if seat.front < -MATCHES && joinery.overhang.is_some() {
            let out = -seat.front - joinery.overhang.map_or(0.0, |over| over.front.max(0.0));
            if out > MATCHES {
                let (out, depth) = (self.say(out), self.say(seat.edge.max(0.0)));
                self.notice(
                    "keeper-stands-out",
                    Place::Keeper,
                    format!("the keeper stands out {out} in front of the lid"),
                    format!("make it {depth} deep, or round it off as a lip for the fingers"),
                );
            }
        }
        if seat.left < 0.0 || seat.right > joinery.outside.width {
            self.error(
                "keeper-beside-box",
                Place::Keeper,
                "the keeper reaches beyond the box at one end".to_owned(),
                "make the keeper narrower or move the tab towards the middle".to_owned(),
            );
        }
        let Some(notch) = joinery.notch else { return };
        if notch.left_in_front < WALL {
            let (left, need) = (self.say(notch.left_in_front), self.say(WALL));
            self.notice(
                "thin-before-notch",
                Place::Body,
                format!("only {left} of the front stays before the notch for the tab, {need} are wanted"),
                "line the notch from behind with a strip of hardwood, or set keeper and tab further back"
                    .to_owned(),
            );
        }
        let beside = (joinery.keeper.right - notch.right).min(notch.left - joinery.keeper.left);
        if beside < 2.0 * WALL {
            let (beside, need) = (self.say(beside), self.say(2.0 * WALL));
            self.notice(
                "keeper-has-no-seat",
                Place::Keeper,
                format!("the keeper lies on only {beside} of wood at each end beside the notch, a screw needs {need}"),
                "make the keeper wider or the tab narrower".to_owned(),
            );
        }
    }

    /// Nothing below the plate runs into a side.
    fn room_under_the_lid(&mut self, joinery: &Joinery) {
        let front = front_face(self.design) + joinery.thickness.finished;
        let back = front + joinery.inside.depth;
        let half = joinery.inside.width / 2.0;
        for (index, dial) in self.design.dials.iter().enumerate() {
            let ((x, y), radius) = (dial.centre, dial.disc.radius);
            let short = (x.abs() + radius - half)
                .max(y + radius - back)
                .max(front - (y - radius));
            if short > 1e-9 {
                let short = self.say(short);
                self.error(
                    "disc-meets-side",
                    Place::Dial(index),
                    format!("its disc would run {short} into a side of the box"),
                    format!("move the dial {short} towards the middle, or take a smaller disc"),
                );
            }
        }
        self.slider_clears(half, back);
    }

    /// The slider's crossbar, forward and back.
    fn slider_clears(&mut self, half: f64, back: f64) {
        let reach = slider_outline(self.design, self.design.slider.travel).extent();
        let short = reach.max.x.max(-reach.min.x) - half;
        let short = short.max(reach.max.y - back);
        if short > 1e-9 {
            let short = self.say(short);
            self.error(
                "slider-meets-side",
                Place::Slider,
                format!("the slider would run {short} into a side of the box"),
                format!("set the outer dials {short} further in, or make the room wider"),
            );
        }
    }
}

fn panel_place(panel: &Panel) -> Place {
    if panel.name == "plate" {
        Place::Plate
    } else {
        Place::Body
    }
}
