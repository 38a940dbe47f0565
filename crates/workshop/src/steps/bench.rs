//! From boards to a glued-up box.

use latchwright_geometry::trig;
use latchwright_model::Corner;
use latchwright_model::wood::moisture_content;

use super::{Job, Source, Value, WorkStep};
use crate::boards::cut_plan;
use crate::joinery::{End, Side};
use crate::parts::{Make, Role, parts};

/// On the first step with a saw.
const SAW: [&str; 5] = [
    "Never trap an offcut between blade and fence: let it fall on the open side of the blade, or end the \
     stop-block before the blade.",
    "Keep guard and riving knife on, stand out of the line of the blade, use push sticks.",
    "Pull the plug before you change or set a blade.",
    "Wear eye and ear protection; take the dust off at the saw and wear a mask.",
    "The saw's manual and local rules go before this sheet; if a cut does not feel safe, ask somebody \
     qualified or cut it by hand.",
];

/// On every later step with a saw.
const SAW_AGAIN: [&str; 3] = [
    "Never trap an offcut between blade and fence: let it fall on the open side of the blade, or end the \
     stop-block before the blade.",
    "Guard, riving knife, push sticks, eye and ear protection, mask against dust: as for ripping and crosscutting.",
    "The saw's manual and local rules go before this sheet.",
];
/// Strips narrower than this do not run between blade and fence, mm: common practice, no source.
const NARROW: f64 = 40.0;
/// Where small parts meet a machine.
pub(super) const SMALL: &str = "Never bring a small part to a blade or bit with your fingers: cut it off a longer piece, or clamp it.";

impl Job<'_> {
    pub(super) fn stock(&self) -> WorkStep {
        let season = &self.design.season;
        let bare = moisture_content(season.built);
        let mut step = WorkStep::new("Choose the wood and let it settle")
            .todo(&[
                "Take straight, flat boards without knots or splits where joints, grooves and bores come.",
                "Let the wood lie one to two weeks in the room where you build, with sticks between the \
                 boards so that air gets round them.",
            ])
            .set("moisture of the wood when built", Value::Percent(bare))
            .set("humidity of the air it is reckoned for", Value::Percent(season.built.humidity));
        let plate = &self.design.plate;
        step = step.say(format!(
            "The plate is {}, {} with its grain along {}.",
            plate.wood,
            match plate.sawn {
                latchwright_model::Sawn::Flat => "flat-sawn",
                latchwright_model::Sawn::Quarter => "quarter-sawn",
            },
            match plate.grain {
                latchwright_model::Grain::AlongX => "the front",
                latchwright_model::Grain::AlongY => "the depth",
            }
        ));
        step.caution(&["Some woods irritate skin and lungs: look yours up before you sand it."])
            .from(&[Source::Moisture, Source::Practice])
    }

    pub(super) fn mill(&self) -> WorkStep {
        let mut step = WorkStep::new("Plane the boards").todo(&[
            "Flatten one face, square one edge to it, then plane to thickness and rip parallel.",
            "Plane long pieces and cut them up afterwards; take the same off both faces.",
            "Write the face and the order on every piece: a triangle over the sides as they lie.",
        ]);
        let mut seen: Vec<f64> = Vec::new();
        for part in parts(self.design) {
            let (Make::Wood, Some(bare), true) = (part.make, part.bare, part.solid) else {
                continue;
            };
            if seen
                .iter()
                .all(|known| (known - bare.thickness).abs() > 0.05)
            {
                seen.push(bare.thickness);
                let name = part.role.name();
                step = step.cut(format!("thickness for {name}"), bare.thickness);
            }
        }
        step.fits(&["Measure the floor's sheet with its coats on: the groove is made to it."])
            .caution(&[
                "Read in the planer's manual how short a piece may be, and keep to it.",
                "Keep your hands off the wood over and before the knives; wear eye and ear protection, and a \
                 mask against dust.",
            ])
            .from(&[Source::Practice])
    }

    pub(super) fn saw(&self) -> WorkStep {
        let bench = &self.design.bench;
        let mut step = WorkStep::new("Rip and crosscut the parts")
            .todo(&[
                "Trim both ends of each board: ends are split further than one sees.",
                "Rip the strips as drawn on the sheet of boards, then crosscut the parts off them.",
                "Keep the sides in their order, left, front, right, back: the grain runs round three corners; \
                 the fourth, at the back, cannot match.",
                "Sheets: lay the good face so that splinters come on the other one, and score the line.",
            ])
            .mm("trim at each end", bench.end_trim.max(0.0))
            .mm("one cut of the saw", bench.kerf.max(0.0))
            .mm("more in length and width than the bare part", bench.rough.max(0.0));
        let mut widths: Vec<f64> = Vec::new();
        for strip in cut_plan(self.design)
            .boards
            .iter()
            .flat_map(|board| &board.strips)
        {
            if widths
                .iter()
                .all(|known| (known - strip.width).abs() > 0.05)
            {
                widths.push(strip.width);
            }
        }
        let narrow = widths.iter().any(|width| *width < NARROW);
        for width in widths {
            step = step.cut("fence for ripping", width);
        }
        if narrow {
            step = step.caution(&[
                "A narrow strip must not run between blade and fence: set the fence for what stays, so that the strip \
                 comes off on the open side, or saw it by hand.",
            ]);
        }
        step.caution(&SAW)
            .caution(&[SMALL])
            .from(&[Source::Practice])
    }

    pub(super) fn ends(&self) -> WorkStep {
        let [front, right, ..] = &self.joinery.sides;
        let mut step = WorkStep::new("Cut the ends of the sides").todo(&[
            "Rip all four sides to their height with one setting of the fence.",
            "Cut front and back with one setting of the stop-block, left and right with another: what is alike \
             is cut alike.",
        ]);
        step = step.cut("fence for the height", self.joinery.height.bare);
        let length = |step: WorkStep, name: &str, side: &Side| match side.ends {
            End::Mitred => step
                .cut(
                    format!("stop-block for {name}, to the long point"),
                    side.outside.bare,
                )
                .cut(format!("short point of {name}, to check"), side.inside.bare),
            _ => step.cut(format!("stop-block for {name}"), side.outside.bare),
        };
        step = length(step, "front and back", front);
        step = length(step, "left and right side", right);
        step = match self.design.body.corner {
            Corner::Mitred => step
                .todo(&[
                    "Set the blade to 45° on scrap: eight trial cuts must close to a ring.",
                    "The long point is on the outside face.",
                ])
                .set("blade", Value::Degrees(45.0)),
            Corner::Butted => step
                .todo(&["Left and right side stand between front and back."])
                .set("blade", Value::Degrees(90.0)),
            Corner::Rabbeted => step
                .todo(&["Cut the rabbets inside both ends of front and back; left and right side stand in them."])
                .set("blade", Value::Degrees(90.0)),
        };
        if let End::Rabbeted { width, depth } = front.ends {
            step = step
                .cut("width of the rabbet", width)
                .cut("blade height for the rabbet", depth);
        }
        step.fits(&["Before the glue: set the four sides up dry and look for light in the joints."])
            .bare(&["the ends of the sides: glue does not hold on a coat"])
            .caution(&SAW_AGAIN)
            .from(&[Source::Practice])
    }

    pub(super) fn grooves(&self) -> WorkStep {
        let [front, right, ..] = &self.joinery.sides;
        let mut step = WorkStep::new("Cut the grooves").todo(&[
            "Lower edge against the fence, inside face on the table, all four sides with one setting.",
            "Try the groove on scrap with the panel that goes into it.",
        ]);
        for groove in &front.grooves {
            let name = groove.panel.name();
            step = step
                .cut(
                    format!("fence to the {name}'s groove, from the lower edge"),
                    groove.above.bare,
                )
                .mm(format!("width of the {name}'s groove"), groove.width)
                .cut(
                    format!("blade height or depth for the {name}'s groove"),
                    groove.depth.bare,
                );
        }
        for (side, name) in [(front, "front and back"), (right, "left and right side")] {
            if let Some(stop) = side
                .grooves
                .first()
                .map(|groove| groove.stop)
                .filter(|stop| *stop > 0.0)
            {
                step = step
                    .say(format!(
                        "On {name} the groove stops {} before each end, or it shows.",
                        self.say(stop)
                    ))
                    .mm(format!("groove of {name} stops before each end"), stop);
            }
        }
        step.fits(&["Before the finish: the panel slides by hand. After the finish: it still does, with its coats on."])
            .bare(&["the grooves"])
            .caution(&SAW_AGAIN)
            .caution(&["Where a groove stops, cut it with a router against stops, not by dropping wood on a running blade."])
            .from(&[Source::Practice])
    }

    pub(super) fn panels(&self) -> WorkStep {
        let mut step = WorkStep::new("Cut the floor to its groove");
        for panel in [Some(&self.joinery.floor), self.joinery.top.as_ref()]
            .into_iter()
            .flatten()
        {
            let name = panel.kind.name();
            step = step
                .cut(format!("{name} from left to right"), panel.width.bare)
                .cut(format!("{name} from front to back"), panel.depth.bare)
                .say(format!(
                    "The {name} has {} clear on the left and on the right and {} in front and at the back: in a year it grows by up to {} and \
                     shrinks by up to {}.",
                    self.rule.say_fine(panel.gap_x),
                    self.rule.say_fine(panel.gap_y),
                    self.rule.say_fine(panel.grows.0.max(panel.grows.1)),
                    self.rule.say_fine(panel.shrinks.0.max(panel.shrinks.1)),
                ));
        }
        step.todo(&[
            "Ease its edges a little so that they find the groove.",
            "Coat both faces and the edges before the glue-up: a bare rim shows when the panel shrinks.",
        ])
        .fits(&["Before the glue-up, coats on: it drops into its groove and moves freely."])
        .caution(&SAW_AGAIN)
        .from(&[Source::Movement, Source::Practice])
    }

    /// Plate, keeper, strips and bridges, each to what it is before its coats.
    pub(super) fn small_parts(&self) -> WorkStep {
        let mut step = WorkStep::new("Cut plate and small parts to size").todo(&[
            "Cut each from its piece sawn rough: first one edge and one end, then width and length.",
            "Edges square to the faces; the two strips together, so that they are alike.",
        ]);
        for part in parts(self.design) {
            let own = match part.role {
                // in a groove it was cut with the floor
                Role::Plate => self.joinery.top.is_none(),
                Role::Keeper | Role::GuideStrip | Role::GuideBridge => true,
                _ => false,
            };
            let (true, Some(bare)) = (own, part.bare) else {
                continue;
            };
            let name = part.role.name();
            for (way, mm) in [
                ("length", bare.length),
                ("width", bare.width),
                ("thickness", bare.thickness),
            ] {
                step = step.cut(format!("{name}: {way}"), mm);
            }
        }
        step.fits(&[
            "Measure every piece: it is the bare size that counts now, its coats come on later.",
        ])
        .bare(&["strips and bridges: wax them", "the keeper's lower face"])
        .caution(&SAW_AGAIN)
        .caution(&[SMALL])
        .from(&[Source::Practice])
    }

    pub(super) fn dry_fit(&self) -> WorkStep {
        let outside = &self.joinery.outside;
        let diagonal = trig::hypot(
            self.less_coats(outside.width),
            self.less_coats(outside.depth),
        );
        WorkStep::new("Put it together dry")
            .todo(&[
                "Put sides and panels together without glue, with the clamps that you will use.",
                "Measure both diagonals: when they are alike it is square.",
                "Lay everything out in the order in which you will need it.",
            ])
            .cut("width outside", self.less_coats(outside.width))
            .cut("depth outside", self.less_coats(outside.depth))
            .cut("both diagonals outside", diagonal)
            .fits(&["Before the glue: every joint closes by hand; clamps hold joints, they do not make them."])
            .from(&[Source::Practice])
    }

    pub(super) fn glue_up(&self) -> WorkStep {
        let step = WorkStep::new("Glue up the box")
            .todo(&[
                "Finish the inside faces first, and mask the joints with tape.",
                "Put tape inside along every joint: glue that runs there cannot be reached later.",
                "Brush glue on the joints; end grain drinks, so give it a thin first coat and wait a minute.",
                "Hold the floor with one spot of glue at the middle of two opposite sides only; it stays free \
                 everywhere else.",
                "Clamp, measure the diagonals again, pull the longer one in; leave it as long as the glue's label says.",
                "Pull the tape off while the glue is still like rubber.",
            ])
            .bare(&["all glued faces"])
            .caution(&["Keep glue off skin and eyes and away from children; read its label."])
            .from(&[Source::Practice]);
        if self.joinery.lid.is_some() {
            return step
                .todo(&["Box and lid are glued up as one closed box, the plate in its groove."]);
        }
        step
    }

    pub(super) fn lid_cut(&self) -> Option<WorkStep> {
        let cut = self.joinery.lid?;
        let thickness = self.joinery.thickness.bare;
        let step = WorkStep::new("Cut the lid off")
            .todo(&[
                "Mark an asymmetric sign over the cut on every side: the lid fits one way only.",
                "Put the upper edge against the fence. Cut front and back right through.",
                "Leave a thin web at left and right side: set the blade lower than the side is thick.",
                "Tape spacers as thick as the cut into the open cuts, then saw the webs through by hand and plane \
                 them level.",
            ])
            .say(format!("The cut takes {}; it is reckoned in the height of the sides.", self.say(cut.lost)))
            .cut("fence, from the upper edge", cut.lid_height - self.film)
            .mm("blade height for front and back", thickness + 1.0)
            .mm("blade height for left and right side", (thickness - 1.0).max(thickness / 2.0))
            .mm("one cut of the saw", cut.lost)
            .mm("spacers in the cuts", cut.lost)
            .fits(&["Before the finish: the lid lies on the box all round without rocking."])
            .caution(&SAW_AGAIN)
            .caution(&[
                "The lid must not drop on the blade or pinch it: keep the last web until the blade stands still.",
            ])
            .from(&[Source::Practice]);
        Some(step)
    }
}
