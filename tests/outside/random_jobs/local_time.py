"""Local time: whole minutes of UTC inside, dates and clock times of an IANA zone at the edges."""
import re
from datetime import date, datetime, timedelta, timezone
from zoneinfo import ZoneInfo

EPOCH = datetime(1970, 1, 1, tzinfo=timezone.utc)
DAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"]


def minutes_of(moment):
    return int((moment - EPOCH).total_seconds() // 60)


def utc(text):
    """Minutes of a time such as 2027-04-05T17:45:00Z."""
    return minutes_of(datetime.fromisoformat(text.replace("Z", "+00:00")))


def day_of(text):
    return date.fromisoformat(text)


def clock_minutes(text):
    hours, minutes = text.split(":")
    return int(hours) * 60 + int(minutes)


def window(text):
    """Begin and end, in minutes of the day, of hours such as 18:30-21:30."""
    begin, end = text.split("-")
    return clock_minutes(begin), clock_minutes(end)


class LocalTime:
    def __init__(self, name):
        self.zone = ZoneInfo(name)
        self.offsets = {}

    def offset(self, minute):
        """Minutes ahead of UTC; no zone in use changes but on a quarter of an hour."""
        quarter = minute // 15
        if quarter not in self.offsets:
            moment = EPOCH + timedelta(minutes=quarter * 15)
            self.offsets[quarter] = int(moment.astimezone(self.zone).utcoffset().total_seconds() // 60)
        return self.offsets[quarter]

    def local(self, minute):
        """The date, as days since 1970, and the minute of the day."""
        return divmod(minute + self.offset(minute), 1440)

    def date(self, minute):
        return date(1970, 1, 1) + timedelta(days=self.local(minute)[0])

    def instant(self, on, minute_of_day):
        """The first minute that the clocks show so, or the one at which they skip it."""
        moment = datetime(on.year, on.month, on.day) + timedelta(minutes=minute_of_day)
        return minutes_of(moment.replace(tzinfo=self.zone).astimezone(timezone.utc))

    def given(self, text, end_of_day=False):
        """A local time as jobs give it; a date alone is its begin or its end."""
        if re.fullmatch(r"\d{4}-\d\d-\d\d", text):
            return self.instant(day_of(text) + timedelta(days=1 if end_of_day else 0), 0)
        moment = datetime.fromisoformat(text)
        return self.instant(moment.date(), moment.hour * 60 + moment.minute)

    def written(self, minute):
        """As --now and --at take it: UTC with a Z, which no change of clocks makes ambiguous."""
        return (EPOCH + timedelta(minutes=minute)).strftime("%Y-%m-%dT%H:%MZ")
