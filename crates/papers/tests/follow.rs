//! Whoever follows the card opens the box: its steps are carried out on the model, word by word.

use latchwright_papers::{Action, CardText, Step};
use latchwright_solver::model::{Design, Dial, Labels};
use latchwright_solver::{Pose, slide};

/// Where the model stands; the dials only turn with the slider forward.
struct Latch<'a> {
    design: &'a Design,
    pose: Pose,
    lid_up: bool,
}

impl Latch<'_> {
    fn follow(&mut self, steps: &[Step]) {
        steps
            .iter()
            .flat_map(|step| &step.actions)
            .for_each(|action| self.act(action));
    }

    fn act(&mut self, action: &Action) {
        match action {
            Action::SlideForward => self.pose.travel = 0.0,
            Action::PointAtHinge => {
                self.may_turn();
                self.pose.turns_deg.fill(0.0);
            }
            Action::Turn(turn) => {
                self.may_turn();
                let dial = &self.design.dials[turn.dial];
                let pointer = &mut self.pose.turns_deg[turn.dial];
                *pointer = (*pointer + turn.signed_marks() * dial.step_deg()).rem_euclid(360.0);
                let mut marks = 0..dial.positions;
                let stands_at =
                    |mark: &u32| (f64::from(*mark) * dial.step_deg() - *pointer).abs() < 1e-6;
                let mark = marks.find(stands_at).expect("the pointer stands at a mark");
                assert_eq!(
                    dial.label(mark),
                    turn.to_label,
                    "the words and the label agree"
                );
                assert!(2 * turn.marks <= dial.positions, "the shorter way round");
            }
            Action::SlideBack => self.pose.travel = slide(self.design, &self.pose.turns_deg).travel,
            Action::Lift => {
                assert!(self.free(), "the lid is held at u = {}", self.pose.travel);
                self.lid_up = true;
            }
            Action::Lower => {
                assert!(self.free(), "the tab is in the way");
                self.lid_up = false;
            }
            Action::TurnAway => {
                self.may_turn();
                let dials = self.design.dials.iter().zip(&mut self.pose.turns_deg);
                dials.for_each(|(dial, pointer)| *pointer += 180.0_f64.min(dial.step_deg() * 2.0));
            }
        }
    }

    fn may_turn(&self) {
        assert_eq!(
            self.pose.travel, 0.0,
            "dials turn only with the slider forward"
        );
    }

    fn free(&self) -> bool {
        self.pose.travel >= self.design.slider.travel
    }
}

fn latch<'a>(design: &'a Design, marks: &[u32]) -> Latch<'a> {
    Latch {
        design,
        pose: Pose::at_marks(design, marks),
        lid_up: false,
    }
}

fn with_dials(count: usize, positions: u32, combination: Vec<u32>) -> Design {
    let mut dial = Dial {
        positions,
        ..Dial::default()
    };
    dial.labels = Labels::Letters;
    Design {
        dials: vec![dial; count],
        combination,
        ..Design::default()
    }
}

fn designs() -> Vec<Design> {
    vec![
        Design::default(),
        with_dials(1, 2, vec![1]),
        with_dials(2, 12, vec![0, 6]),
        with_dials(4, 6, vec![5, 3, 0, 1]),
        with_dials(12, 8, vec![0, 1, 2, 3, 4, 5, 6, 7, 0, 1, 2, 3]),
    ]
}

#[test]
fn following_the_card_opens_the_latch_from_any_setting() {
    for design in designs() {
        let text = CardText::of(&design);
        for start in 0..design.dials[0].positions {
            let marks = vec![start; design.dials.len()];
            let mut latch = latch(&design, &marks);
            latch.follow(&text.open);
            assert!(latch.lid_up, "from mark {start}");
        }
    }
}

#[test]
fn leaving_out_the_turn_of_any_one_dial_leaves_it_locked() {
    let design = Design::default();
    let text = CardText::of(&design);
    for left_out in 0..design.dials.len() {
        let mut latch = latch(&design, &[0, 0, 0]);
        let turns = text.turns().filter(|turn| turn.dial != left_out);
        turns.for_each(|turn| latch.act(&Action::Turn(turn.clone())));
        latch.act(&Action::SlideBack);
        assert!(!latch.free(), "dial {left_out} was not needed");
    }
}

#[test]
fn following_the_card_closes_the_latch_again() {
    for design in designs() {
        let text = CardText::of(&design);
        let mut latch = latch(&design, &[]);
        latch.follow(&text.open);
        latch.follow(&text.close);
        assert!(!latch.lid_up);
        latch.act(&Action::SlideBack);
        assert!(!latch.free(), "still open after closing");
    }
}

#[test]
fn there_are_at_most_five_steps_however_many_dials() {
    for design in designs() {
        assert!((3..=5).contains(&CardText::of(&design).open.len()));
    }
}

#[test]
fn without_the_combination_the_words_do_not_depend_on_it() {
    let mut one = Design::default();
    one.card.show_combination = false;
    let mut other = one.clone();
    other.combination = vec![7, 0, 4];
    assert_eq!(CardText::of(&one), CardText::of(&other));
    assert_eq!(CardText::of(&one).turns().count(), 0);
}
