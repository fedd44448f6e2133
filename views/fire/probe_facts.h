// The figures of a cook's probes, a column a probe, with the faults that were left out of them.
#pragma once

#include "views/fire/cook_curves.h"

#include <QWidget>

class QGridLayout;

namespace rickyard::views {

class TextLabel;

class ProbeFacts : public QWidget
{
    Q_OBJECT

public:
    explicit ProbeFacts(QWidget *parent = nullptr);
    // Probes beside each other; further ones stand below.
    void setProbesAcross(int probes) { m_across = probes; }
    // Hidden without a trace. Figures are in the yard's units.
    void show(const domain::Books &books, const CookCurves &curves);
    // The whole as text, a line a figure.
    [[nodiscard]] QString text() const { return m_text; }

private:
    struct Line {
        QString name;
        QStringList values; // a probe each
    };
    void fill(const QStringList &probes, const QVector<Line> &lines);
    void showFaults(const domain::Books &books, const domain::Cook &cook,
                    const QVector<domain::ProbeSummary> &summaries);

    QWidget *m_table;
    QGridLayout *m_grid;
    QWidget *m_faults;
    TextLabel *m_note;
    QString m_text;
    int m_across = 3;
};

} // namespace rickyard::views
