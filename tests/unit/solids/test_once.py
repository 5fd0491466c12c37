"""Answers that are kept by the record they follow from."""

from boardwright.solids.once import once


class Record:
    pass


def test_the_same_record_is_asked_once_and_an_equal_one_again():
    asked = []

    @once(2)
    def doubled(record, more=0):
        asked.append((record, more))
        return len(asked)

    one, two = Record(), Record()
    assert [doubled(one), doubled(one), doubled(two), doubled(one, 1)] == [1, 1, 2, 3]
    assert len(asked) == 3


def test_no_more_answers_are_kept_than_said():
    asked = []

    @once(2)
    def seen(record):
        asked.append(record)
        return record

    records = [Record() for _ in range(3)]
    for r in [*records, records[0]]:
        assert seen(r) is r
    assert len(asked) == 4
