"""How hard a text is to read: a published formula over words, sentences and syllables."""

import re


def syllables(word: str) -> int:
    """Groups of vowels of a word, without a silent e at its end; at least one."""
    word = re.sub(r"[^a-z]", "", word.lower())
    groups = len(re.findall(r"[aeiouy]+", word))
    silent = word.endswith("e") and not word.endswith("le") and groups > 1
    silent = silent or (bool(re.search(r"[^aeiouytd]ed$", word)) and groups > 1)
    return max(1, groups - silent)


def grade(text: str) -> float:
    """Flesch-Kincaid: 0.39 words a sentence + 11.8 syllables a word - 15.59, in school years."""
    sentences = [one for one in re.split(r"[.:!?]+(?:\s|$)", text) if one.strip()]
    words = re.findall(r"[A-Za-z][A-Za-z'-]*|\d[\d,.]*", text)
    spoken = sum(syllables(word) for word in words)
    return 0.39 * len(words) / len(sentences) + 11.8 * spoken / len(words) - 15.59
