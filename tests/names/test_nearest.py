from __future__ import annotations

from auctorum.names.nearest import nearest

KNOWN = ["Exemplum album", "Exemplum nigrum", "Alterum novae-terrae", "Exemplum mülleri"]


def test_best_first_and_no_more_than_asked() -> None:
    assert nearest("Exemplum albun", KNOWN)[0] == "Exemplum album"
    assert len(nearest("Exemplum albun", KNOWN, limit=2)) == 2


def test_case_marks_and_hyphens_make_no_difference() -> None:
    assert nearest("ALTERUM NOVAETERRAE", KNOWN, cutoff=100) == ("Alterum novae-terrae",)
    assert nearest("exemplum muelleri", KNOWN, cutoff=100) == ("Exemplum mülleri",)


def test_nothing_like_it() -> None:
    assert nearest("qqqq", KNOWN) == ()
    assert nearest("Exemplum", []) == ()


def test_the_order_of_the_known_does_not_matter() -> None:
    assert nearest("ab", ["ad", "ac", "ac"], cutoff=0) == nearest("ab", ["ac", "ad"], cutoff=0) == ("ac", "ad")
