// Plain text for a terminal: aligned columns and wrapped paragraphs.
#pragma once

#include <QString>
#include <QStringList>
#include <QVector>

namespace rickyard::app {

enum class Align { Left, Right };

class TextTable
{
public:
    explicit TextTable(QVector<Align> aligns = {}) : m_aligns(std::move(aligns)) {}
    void heading(const QStringList &cells); // with a rule below
    void row(const QStringList &cells) { m_rows << cells; }
    [[nodiscard]] bool isEmpty() const { return m_rows.isEmpty(); }
    [[nodiscard]] QString text(int indent = 0) const;

private:
    QVector<Align> m_aligns;
    QVector<QStringList> m_rows;
    bool m_heading = false;
};

// Broken between words at 80 columns; every line begins with `indent` spaces.
QString wrapped(const QString &text, int indent = 0);

} // namespace rickyard::app
