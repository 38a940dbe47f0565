//! Whoever follows the card opens the box: what its words say is carried out on the model, in every
//! language.

mod reader;

use latchwright_model::Pose;
use latchwright_model::{CardStyle, Design, Dial, Labels, Language};
use latchwright_papers::{Action, CardText};
use latchwright_proof::slide;
use reader::Reader;

/// Where the model stands; the dials only turn with the slider forward.
struct Latch<'a> {
    design: &'a Design,
    pose: Pose,
    lid_up: bool,
}

impl Latch<'_> {
    fn follow(&mut self, actions: &[Action]) {
        for action in actions {
            self.act(action);
        }
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
            Action::TurnToSecret => {
                self.may_turn();
                let whispered = &self.design.combination;
                self.pose.turns_deg = Pose::at_marks(self.design, whispered).turns_deg;
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
    let mut pictures = with_dials(2, 12, vec![5, 8]);
    for dial in &mut pictures.dials {
        dial.labels = Labels::Pictures(latchwright_drawing::PICTURES.map(str::to_owned).to_vec());
    }
    vec![
        Design::default(),
        with_dials(1, 2, vec![1]),
        with_dials(2, 12, vec![0, 6]),
        with_dials(4, 6, vec![5, 3, 0, 1]),
        with_dials(12, 8, vec![0, 1, 2, 3, 4, 5, 6, 7, 0, 1, 2, 3]),
        pictures,
    ]
}

/// Each design in each language, with its card and who reads it.
fn cards(designs: Vec<Design>) -> Vec<(Design, CardText, Reader)> {
    let mut all = Vec::new();
    for design in designs {
        for language in Language::ALL {
            let mut design = design.clone();
            design.card.language = language;
            let text = CardText::of(&design);
            all.push((design, text, Reader::of(language)));
        }
    }
    all
}

#[test]
fn following_the_card_opens_the_latch_from_any_setting() {
    for (design, text, reader) in cards(designs()) {
        let open = reader.read(&design, &text.open);
        for start in 0..design.dials[0].positions {
            let marks = vec![start; design.dials.len()];
            let mut latch = latch(&design, &marks);
            latch.follow(&open);
            assert!(latch.lid_up, "{} from mark {start}", text.language);
        }
    }
}

#[test]
fn following_the_card_closes_the_latch_again() {
    for (design, text, reader) in cards(designs()) {
        let mut latch = latch(&design, &[]);
        latch.follow(&reader.read(&design, &text.open));
        latch.follow(&reader.read(&design, &text.close));
        assert!(!latch.lid_up);
        latch.act(&Action::SlideBack);
        assert!(!latch.free(), "{}: still open after closing", text.language);
    }
}

#[test]
fn who_is_told_the_secret_opens_the_latch_with_a_card_that_keeps_it() {
    let mut designs = designs();
    for design in &mut designs {
        design.card.show_combination = false;
    }
    for (design, text, reader) in cards(designs) {
        let mut latch = latch(&design, &[]);
        latch.follow(&reader.read(&design, &text.open));
        assert!(latch.lid_up, "{}", text.language);
    }
}

#[test]
fn every_language_says_the_same_actions_in_words_and_as_data() {
    for shown in [true, false] {
        let mut designs = designs();
        for design in &mut designs {
            design.card.show_combination = shown;
        }
        for (design, text, reader) in cards(designs) {
            let mut english = design.clone();
            english.card.language = Language::English;
            let english = CardText::of(&english);
            for (steps, theirs) in [(&text.open, &english.open), (&text.close, &english.close)] {
                let actions = |steps: &[latchwright_papers::CardStep]| -> Vec<Action> {
                    let all = steps.iter().flat_map(|step| &step.actions);
                    all.cloned().collect()
                };
                assert_eq!(actions(steps), actions(theirs), "{}", text.language);
                assert_eq!(
                    reader.read(&design, steps),
                    actions(steps),
                    "{}",
                    text.language
                );
            }
        }
    }
}

#[test]
fn a_card_in_pictures_has_the_steps_of_the_card_in_words() {
    for (mut design, in_words, _) in cards(designs()) {
        design.card.style = CardStyle::Pictures;
        assert_eq!(CardText::of(&design), in_words);
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
fn there_are_at_most_five_steps_however_many_dials() {
    for (_, text, _) in cards(designs()) {
        assert!((3..=5).contains(&text.open.len()));
    }
}

#[test]
fn without_the_combination_the_words_do_not_depend_on_it() {
    for language in Language::ALL {
        let mut one = Design::default();
        one.card.language = language;
        one.card.show_combination = false;
        let mut other = one.clone();
        other.combination = vec![7, 0, 4];
        assert_eq!(CardText::of(&one), CardText::of(&other));
        assert_eq!(CardText::of(&one).turns().count(), 0);
    }
}
