// Reads a reference CSV of tests/data: '#' lines are its source and are skipped, then a header,
// then rows without quoting. Header only, so that any test binary can include it.
#pragma once

#include <QFile>
#include <QString>
#include <QStringList>
#include <QVector>

#include <cmath>
#include <vector>

namespace rickyard::test
{

class ReferenceTable
{
public:
    // `name` is relative to tests/data/reference. An unreadable file gives an empty table: tests
    // assert on rows() so that a lost file fails them.
    explicit ReferenceTable(const QString &name)
    {
        const QString folder = QString::fromUtf8(RICKYARD_TEST_DATA);
        QFile file(QStringLiteral("%1/reference/%2").arg(folder, name));
        if (!file.open(QIODevice::ReadOnly | QIODevice::Text))
            return;
        for (const QString &line : QString::fromUtf8(file.readAll()).split(QLatin1Char('\n'))) {
            if (line.trimmed().isEmpty() || line.startsWith(QLatin1Char('#')))
                continue;
            const QStringList cells = line.split(QLatin1Char(','));
            if (m_header.isEmpty())
                m_header = cells;
            else
                m_rows << cells;
        }
    }

    [[nodiscard]] qsizetype rows() const { return m_rows.size(); }
    [[nodiscard]] const QStringList &header() const { return m_header; }
    [[nodiscard]] QString text(qsizetype row, const QString &column) const
    {
        return m_rows.at(row).value(m_header.indexOf(column)).trimmed();
    }
    // NaN when the cell is not a number, so that a comparison with it fails.
    [[nodiscard]] double number(qsizetype row, const QString &column) const
    {
        bool ok = false;
        const double value = text(row, column).toDouble(&ok);
        return ok ? value : std::nan("");
    }
    [[nodiscard]] std::vector<double> column(const QString &name) const
    {
        std::vector<double> values;
        for (qsizetype i = 0; i < rows(); ++i)
            values.push_back(number(i, name));
        return values;
    }
    // The number in `column` of the row whose first cell is `key`; NaN when there is none.
    [[nodiscard]] double lookup(const QString &key, const QString &column) const
    {
        for (qsizetype i = 0; i < rows(); ++i)
            if (m_rows.at(i).first() == key)
                return number(i, column);
        return std::nan("");
    }

private:
    QStringList m_header;
    QVector<QStringList> m_rows;
};

// Correct digits of a computed value: the log relative error of the NIST StRD project, at most 15.
// NaN and infinity count as no digit at all.
inline double correctDigits(double computed, double certified)
{
    if (!std::isfinite(computed) || !std::isfinite(certified))
        return 0.0;
    const double error = certified == 0.0 ? std::abs(computed)
                                          : std::abs(computed - certified) / std::abs(certified);
    return error <= 1e-15 ? 15.0 : std::min(15.0, -std::log10(error));
}

} // namespace rickyard::test
