#include "models/exchange/time_pattern.h"

#include <cmath>

namespace rickyard::exchange {

namespace {

bool digitAt(std::string_view text, std::size_t at)
{
    return at < text.size() && text[at] >= '0' && text[at] <= '9';
}

// A number of at most `most` digits from `at` on, which is moved behind it.
std::optional<int> takeNumber(std::string_view text, std::size_t &at, int most)
{
    int value = 0;
    int count = 0;
    while (count < most && digitAt(text, at)) {
        value = value * 10 + (text[at] - '0');
        ++at;
        ++count;
    }
    return count > 0 ? std::optional<int>(value) : std::nullopt;
}

bool fixedNumber(std::string_view text, std::size_t &at, int digits, int &value)
{
    const std::size_t from = at;
    const auto number = takeNumber(text, at, digits);
    if (!number || at - from != static_cast<std::size_t>(digits))
        return false;
    value = *number;
    return true;
}

void passFraction(std::string_view text, std::size_t &at)
{
    if (at < text.size() && (text[at] == '.' || text[at] == ',') && digitAt(text, at + 1))
        for (++at; digitAt(text, at);)
            ++at;
}

// "", "Z", " UTC", "+02", "+0200", "-05:00"; false for anything else.
bool takeOffset(std::string_view rest, std::optional<int> &offset)
{
    rest = trimmedView(rest);
    if (rest.empty())
        return true;
    if (rest == "Z" || rest == "z" || rest == "UTC") {
        offset = 0;
        return true;
    }
    if (rest[0] != '+' && rest[0] != '-')
        return false;
    std::size_t at = 1;
    int hours = 0;
    int minutes = 0;
    if (!fixedNumber(rest, at, 2, hours))
        return false;
    if (at < rest.size() && rest[at] == ':')
        ++at;
    if (at < rest.size() && !fixedNumber(rest, at, 2, minutes))
        return false;
    if (at != rest.size() || hours > 14 || minutes > 59)
        return false;
    offset = (rest[0] == '-' ? -1 : 1) * (hours * 3600 + minutes * 60);
    return true;
}

bool sensibleClock(int hour, int minute, int second)
{
    // A leap second counts as the second before it; 24:00:00 ends a day.
    return minute < 60 && second < 61 && (hour < 24 || (hour == 24 && minute == 0 && second == 0));
}

} // namespace

std::string_view trimmedView(std::string_view text)
{
    while (!text.empty() && (text.front() == ' ' || text.front() == '\t'))
        text.remove_prefix(1);
    while (!text.empty() && (text.back() == ' ' || text.back() == '\t'))
        text.remove_suffix(1);
    return text;
}

// Howard Hinnant's days_from_civil (public domain), with a check of the day.
std::optional<qint64> dayOfCalendar(int year, int month, int day)
{
    static constexpr std::array<int, 12> lengths = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    if (month < 1 || month > 12 || day < 1 || year < 1800 || year > 2200)
        return std::nullopt;
    const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    const int length = lengths[static_cast<std::size_t>(month - 1)] + (leap && month == 2 ? 1 : 0);
    if (day > length)
        return std::nullopt;
    const int y = month <= 2 ? year - 1 : year;
    const int era = y / 400;
    const int yearOfEra = y - era * 400;
    const int dayOfYear = (153 * (month + (month > 2 ? -3 : 9)) + 2) / 5 + day - 1;
    const int dayOfEra = yearOfEra * 365 + yearOfEra / 4 - yearOfEra / 100 + dayOfYear;
    return static_cast<qint64>(era) * 146097 + dayOfEra - 719468;
}

TimePattern::TimePattern(const QString &style)
{
    if (style.isEmpty()) {
        m_iso = m_date = m_valid = true;
        return;
    }
    parse(style.toUtf8());
    int years = 0;
    int months = 0;
    int days = 0;
    int hours = 0;
    int minutes = 0;
    for (const Piece &piece : m_pieces) {
        years += piece.part == Part::Year || piece.part == Part::ShortYear ? 1 : 0;
        months += piece.part == Part::Month ? 1 : 0;
        days += piece.part == Part::Day ? 1 : 0;
        hours += piece.part == Part::Hour ? 1 : 0;
        minutes += piece.part == Part::Minute ? 1 : 0;
        m_halfDay = m_halfDay || piece.part == Part::HalfDay;
    }
    m_date = years == 1 && months == 1 && days == 1;
    const bool noDate = years == 0 && months == 0 && days == 0;
    m_valid = hours == 1 && minutes == 1 && (m_date || noDate);
}

void TimePattern::parse(const QByteArray &style)
{
    for (qsizetype at = 0; at < style.size();) {
        const char c = style.at(at);
        qsizetype run = 1;
        while (at + run < style.size() && style.at(at + run) == c)
            ++run;
        if (c == 'A' && at + 1 < style.size() && style.at(at + 1) == 'P') {
            m_pieces.push_back({Part::HalfDay, c});
            at += 2;
            continue;
        }
        std::optional<Part> part;
        switch (c) {
        case 'y':
            part = run > 2 ? Part::Year : Part::ShortYear;
            break;
        case 'M':
            part = Part::Month;
            break;
        case 'd':
            part = Part::Day;
            break;
        case 'H':
        case 'h':
            part = Part::Hour;
            break;
        case 'm':
            part = Part::Minute;
            break;
        case 's':
            part = Part::Second;
            break;
        default:
            break;
        }
        if (part)
            m_pieces.push_back({*part, c});
        else
            m_pieces.insert(m_pieces.end(), static_cast<std::size_t>(run), {Part::Letter, c});
        at += run;
    }
}

std::optional<ClockReading> TimePattern::readIso(std::string_view text) const
{
    std::size_t at = 0;
    int year = 0;
    int month = 0;
    int day = 0;
    int hour = 0;
    int minute = 0;
    int second = 0;
    const auto sign = [&](char c) {
        const bool there = at < text.size() && text[at] == c;
        at += there ? 1 : 0;
        return there;
    };
    if (!fixedNumber(text, at, 4, year))
        return std::nullopt;
    const bool dashes = sign('-');
    if (!fixedNumber(text, at, 2, month) || (dashes && !sign('-')) ||
        !fixedNumber(text, at, 2, day) || !(sign('T') || sign(' ')) ||
        !fixedNumber(text, at, 2, hour))
        return std::nullopt;
    sign(':');
    if (!fixedNumber(text, at, 2, minute))
        return std::nullopt;
    if (sign(':') || digitAt(text, at)) {
        if (!fixedNumber(text, at, 2, second))
            return std::nullopt;
        passFraction(text, at);
    }
    ClockReading reading;
    reading.day = dayOfCalendar(year, month, day);
    if (!reading.day || !sensibleClock(hour, minute, second) ||
        !takeOffset(text.substr(at), reading.offsetSeconds))
        return std::nullopt;
    reading.secondOfDay = hour * 3600 + minute * 60 + std::min(second, 59);
    return reading;
}

std::optional<ClockReading> TimePattern::read(std::string_view text) const
{
    text = trimmedView(text);
    if (m_iso)
        return readIso(text);
    std::array<int, 7> value{}; // by Part, up to Second
    bool afternoon = false;
    std::size_t at = 0;
    for (const Piece &piece : m_pieces) {
        if (piece.part == Part::Letter) {
            if (at >= text.size() || text[at] != piece.letter)
                return std::nullopt;
            ++at;
        } else if (piece.part == Part::HalfDay) {
            if (at + 1 >= text.size() || (text[at + 1] | 0x20) != 'm')
                return std::nullopt;
            afternoon = (text[at] | 0x20) == 'p';
            if (!afternoon && (text[at] | 0x20) != 'a')
                return std::nullopt;
            at += 2;
        } else {
            const auto number = takeNumber(text, at, piece.part == Part::Year ? 4 : 2);
            if (!number)
                return std::nullopt;
            value[static_cast<std::size_t>(piece.part)] = *number;
            if (piece.part == Part::Second)
                passFraction(text, at);
        }
    }
    const auto of = [&value](Part part) { return value[static_cast<std::size_t>(part)]; };
    int hour = of(Part::Hour);
    if (m_halfDay) {
        if (hour < 1 || hour > 12)
            return std::nullopt;
        hour = hour % 12 + (afternoon ? 12 : 0);
    }
    ClockReading reading;
    if (!sensibleClock(hour, of(Part::Minute), of(Part::Second)) ||
        !takeOffset(text.substr(at), reading.offsetSeconds))
        return std::nullopt;
    if (m_date) {
        const int year = of(Part::Year) > 0 ? of(Part::Year) : 2000 + of(Part::ShortYear);
        reading.day = dayOfCalendar(year, of(Part::Month), of(Part::Day));
        if (!reading.day)
            return std::nullopt;
    }
    reading.secondOfDay = hour * 3600 + of(Part::Minute) * 60 + std::min(of(Part::Second), 59);
    return reading;
}

std::optional<double> readPlainNumber(std::string_view text, char decimal)
{
    text = trimmedView(text);
    std::size_t at = 0;
    const bool negative = !text.empty() && text[0] == '-';
    if (!text.empty() && (text[0] == '-' || text[0] == '+'))
        ++at;
    constexpr int mostDigits = 17; // of a number held exactly while it is read
    qint64 digits = 0;
    int count = 0;
    int behind = 0;
    for (; digitAt(text, at) && count < mostDigits; ++at, ++count)
        digits = digits * 10 + (text[at] - '0');
    if (at < text.size() && text[at] == decimal) {
        for (++at; digitAt(text, at); ++at) {
            if (count >= mostDigits)
                continue;
            digits = digits * 10 + (text[at] - '0');
            ++count;
            ++behind;
        }
    }
    if (count == 0 || at != text.size())
        return std::nullopt;
    static constexpr std::array<double, 18> powers = {1,    1e1,  1e2,  1e3,  1e4,  1e5,
                                                      1e6,  1e7,  1e8,  1e9,  1e10, 1e11,
                                                      1e12, 1e13, 1e14, 1e15, 1e16, 1e17};
    const double value = static_cast<double>(digits) / powers[static_cast<std::size_t>(behind)];
    return negative ? -value : value;
}

std::optional<double> readElapsed(std::string_view text, char decimal, double scale)
{
    text = trimmedView(text);
    if (text.find(':') == std::string_view::npos) {
        const auto number = readPlainNumber(text, decimal);
        return number ? std::optional<double>(*number * scale) : std::nullopt;
    }
    std::array<double, 3> parts{};
    std::size_t count = 0;
    double days = 0;
    while (count < parts.size()) {
        const std::size_t colon = text.find(':');
        std::string_view part = text.substr(0, colon);
        const std::size_t point = part.find('.');
        if (count == 0 && point != std::string_view::npos && colon != std::string_view::npos) {
            const auto whole = readPlainNumber(part.substr(0, point), '.');
            if (!whole)
                return std::nullopt;
            days = *whole;
            part = part.substr(point + 1);
        }
        const auto number = readPlainNumber(part, decimal);
        if (!number || *number < 0 || (count > 0 && *number >= 60))
            return std::nullopt;
        parts[count++] = *number;
        if (colon == std::string_view::npos)
            break;
        text = text.substr(colon + 1);
        if (count == parts.size())
            return std::nullopt;
    }
    return days * 86400 + parts[0] * 3600 + parts[1] * 60 + parts[2];
}

} // namespace rickyard::exchange
