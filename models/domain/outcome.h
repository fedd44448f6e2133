// Errors are values with words for a person: what is wrong, where, and what to do about it.
#pragma once

#include <QString>
#include <QVector>

#include <utility>
#include <variant>

namespace rickyard::domain {

struct Problem {
    QString field;   // key of the field at fault; empty when it concerns the whole
    QString message; // a sentence for a person
};
using Problems = QVector<Problem>;

inline QString joined(const Problems &problems)
{
    QStringList lines;
    for (const Problem &p : problems)
        lines << p.message;
    return lines.join(QLatin1Char('\n'));
}

struct Done {
};

// Either a value or the problems that stood in the way.
template <class T = Done>
class [[nodiscard]] Outcome
{
public:
    Outcome(T value) : m_state(std::move(value)) {}
    Outcome(Problems problems) : m_state(std::move(problems)) {}
    Outcome(Problem problem) : m_state(Problems{std::move(problem)}) {}
    static Outcome failed(const QString &message, const QString &field = {})
    {
        return Outcome(Problems{{field, message}});
    }

    [[nodiscard]] bool ok() const { return std::holds_alternative<T>(m_state); }
    explicit operator bool() const { return ok(); }
    [[nodiscard]] const T &value() const { return std::get<T>(m_state); }
    T &value() { return std::get<T>(m_state); }
    const T *operator->() const { return &value(); }
    [[nodiscard]] Problems problems() const
    {
        return ok() ? Problems{} : std::get<Problems>(m_state);
    }
    [[nodiscard]] QString message() const { return joined(problems()); }

private:
    std::variant<T, Problems> m_state;
};

} // namespace rickyard::domain
