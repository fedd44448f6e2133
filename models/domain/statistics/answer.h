// What a statistical routine hands back: a value, or the reason why there is none. The reason is an
// enumerator so that a caller can act on it (with too few rows the prior alone still answers), and
// words so that a person can read it.
#pragma once

#include <QString>

#include <utility>
#include <variant>

namespace rickyard::domain::statistics
{

enum class Reason {
    TooFewRows,    // fewer observations than the question needs
    RankDeficient, // some column repeats the others: its coefficient is not determined
    NotFinite,     // the data hold a missing or infinite number
    ShapeMismatch, // lengths that should agree do not
    OutOfRange,    // an argument lies outside its domain (a level of 1.2, a negative weight)
    NoAnswer       // the arguments are lawful but the result cannot be represented
};

struct Refusal {
    Reason reason;
    QString message; // a sentence or two for a person: what happened, what to do
};

template <class T>
class [[nodiscard]] Answer
{
public:
    Answer(T value) : m_state(std::move(value)) {}
    Answer(Refusal refusal) : m_state(std::move(refusal)) {}

    [[nodiscard]] bool ok() const { return std::holds_alternative<T>(m_state); }
    explicit operator bool() const { return ok(); }
    // Only after ok(); otherwise std::bad_variant_access.
    [[nodiscard]] const T &value() const { return std::get<T>(m_state); }
    const T *operator->() const { return &value(); }
    // Only when not ok().
    [[nodiscard]] const Refusal &refusal() const { return std::get<Refusal>(m_state); }

private:
    std::variant<T, Refusal> m_state;
};

// A central value with its limits, all in the unit of the data; `level` is the coverage in (0, 1).
struct Interval {
    double centre = 0.0;
    double lower = 0.0;
    double upper = 0.0;
    double level = 0.0;
};

} // namespace rickyard::domain::statistics
