//! Phrases put together: a list of several, a sentence begun.

/// "a", "a and b", "a, b and c"; `None` where there is nothing to list, for what is to be said then only
/// whoever asks knows.
pub fn listed(parts: &[String]) -> Option<String> {
    match parts {
        [] => None,
        [one] => Some(one.clone()),
        [before @ .., last] => Some(format!("{} and {last}", before.join(", "))),
    }
}

/// With a capital first.
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + letters.as_str()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_list_of_nothing_says_nothing() {
        let parts = ["bits", "pins", "air"].map(str::to_owned);
        assert_eq!(listed(&[]), None);
        assert_eq!(listed(&parts[..1]).as_deref(), Some("bits"));
        assert_eq!(listed(&parts[..2]).as_deref(), Some("bits and pins"));
        assert_eq!(listed(&parts).as_deref(), Some("bits, pins and air"));
    }

    #[test]
    fn only_the_first_letter_becomes_a_capital() {
        assert_eq!(capital("élan, so to say"), "Élan, so to say");
        assert_eq!(capital(""), "");
    }
}
