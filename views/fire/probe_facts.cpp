#include "views/fire/probe_facts.h"

#include "views/fire/fire_words.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QGridLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

QString minutesOrHours(Duration duration)
{
    const qint64 minutes = (duration.base() + 30) / 60;
    return minutes < 60 ? withUnit(QString::number(minutes), QStringLiteral("min"))
                        : FireWords::span(Duration::ofBase(minutes * 60));
}

// "1,250 °F h": a difference, so only the size of a degree counts.
QString degreeHourWords(const FireWords &words, double kelvinHours)
{
    const Unit &unit = words.unit(Dimension::Temperature);
    return withUnit(formatNumber(kelvinHours * 1000.0 / unit.scale, 0, words.locale()),
                    QString(unit.symbol + QStringLiteral(" h")));
}

} // namespace

ProbeFacts::ProbeFacts(QWidget *parent)
    : QWidget(parent), m_table(new QWidget(this)), m_grid(new QGridLayout(m_table)),
      m_faults(new QWidget(this)),
      m_note(new TextLabel(QString(), TextStyle::Caption, Role::InkMuted, this))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    column->addWidget(
        new TextLabel(tr("What the probes say"), TextStyle::Heading, Role::Ink, this));
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(look.space(4));
    m_grid->setVerticalSpacing(look.space(1));
    column->addWidget(m_table);
    auto *faults = new QVBoxLayout(m_faults);
    faults->setContentsMargins(0, 0, 0, 0);
    faults->setSpacing(look.space(1));
    column->addWidget(m_faults);
    m_note->setWordWrap(true);
    column->addWidget(m_note);
    hide();
}

void ProbeFacts::show(const Books &books, const CookCurves &curves)
{
    const Cook cook = books.cooks.value(curves.cook);
    setVisible(!curves.summaries.isEmpty());
    m_text.clear();
    if (curves.summaries.isEmpty())
        return;
    const FireWords words(books);
    QStringList probes;
    Line mean{tr("Mean"), {}};
    Line above{tr("Above outside"), {}};
    Line reached{cook.target ? tr("To %1").arg(words.temperature(*cook.target).text())
                             : tr("To temperature"),
                 {}};
    Line steady{tr("Inside the band"), {}};
    Line back{tr("Back after a feed"), {}};
    const QString missing = missingMark();
    for (const ProbeSummary &one : curves.summaries) {
        probes << one.probe;
        mean.values << (one.mean ? words.temperature(*one.mean).text() : missing);
        above.values << (one.degreeHours ? degreeHourWords(words, *one.degreeHours) : missing);
        reached.values << (one.toTemperature ? minutesOrHours(*one.toTemperature) : missing);
        steady.values << (one.steady ? withUnit(formatNumber(100 * *one.steady, 0, words.locale()),
                                                QStringLiteral("%"))
                                     : missing);
        back.values << (!one.recovery               ? missing
                        : one.recovery->base() < 30 ? tr("never lower")
                                                    : minutesOrHours(*one.recovery));
    }
    fill(probes, {mean, above, reached, steady, back});
    showFaults(books, cook, curves.summaries);
    const double half = kTargetBand.toDouble() / words.unit(Dimension::Temperature).scale;
    m_note->setText(
        tr("From lighting to fire out. Band: within %1 of the target, from at temperature until "
           "the "
           "food is off; a working figure. Back after a feed: the median; a probe that never "
           "reaches the target is not one of the pit and has neither.")
            .arg(withUnit(formatNumber(half, 0, words.locale()),
                          words.unit(Dimension::Temperature).symbol)));
}

void ProbeFacts::fill(const QStringList &probes, const QVector<Line> &lines)
{
    clearLayout(m_grid);
    int row = 0;
    QStringList text;
    for (qsizetype first = 0; first < probes.size(); first += m_across) {
        const qsizetype end = std::min(first + m_across, probes.size());
        if (first > 0)
            m_grid->setRowMinimumHeight(row++, theme(this).space(2));
        for (qsizetype i = first; i < end; ++i)
            m_grid->addWidget(
                new TextLabel(probes.at(i), TextStyle::Caption, Role::InkMuted, m_table), row,
                static_cast<int>(i - first) + 1, Qt::AlignRight);
        ++row;
        for (const Line &line : lines) {
            m_grid->addWidget(new TextLabel(line.name, TextStyle::Label, Role::InkMuted, m_table),
                              row, 0);
            for (qsizetype i = first; i < end; ++i) {
                auto *value =
                    new TextLabel(line.values.at(i), TextStyle::Figures, Role::Ink, m_table);
                value->setAccessibleName(
                    QStringLiteral("%1, %2: %3").arg(probes.at(i), line.name, line.values.at(i)));
                m_grid->addWidget(value, row, static_cast<int>(i - first) + 1, Qt::AlignRight);
                text << value->accessibleName();
            }
            ++row;
        }
    }
    m_grid->setColumnStretch(m_across + 1, 1);
    m_text = text.join(QLatin1Char('\n'));
    m_table->setAccessibleName(tr("Figures of the probes"));
    m_table->setAccessibleDescription(m_text);
}

void ProbeFacts::showFaults(const Books &books, const Cook &cook,
                            const QVector<ProbeSummary> &summaries)
{
    clearLayout(m_faults->layout());
    const FireWords words(books);
    bool any = false;
    for (const ProbeSummary &one : summaries)
        for (const ProbeFault &fault : one.faults) {
            any = true;
            auto *line = new QWidget(m_faults);
            auto *row = new QHBoxLayout(line);
            row->setContentsMargins(0, 0, 0, 0);
            row->setSpacing(theme(this).space(2));
            row->addWidget(new StatusPill(Role::Watch,
                                          fault.kind == ProbeFaultKind::Flat
                                              ? tr("%1 stood still").arg(one.probe)
                                              : tr("%1 came off").arg(one.probe),
                                          line),
                           0, Qt::AlignTop);
            const QString said =
                tr("From %1: %2. Left out of these figures; the readings stay.")
                    .arg(words.clock(cook.lit + Duration::ofBase(fault.from)), fault.words());
            auto *label = new TextLabel(said, TextStyle::Caption, Role::Ink, line);
            label->setWordWrap(true);
            row->addWidget(label, 1);
            m_faults->layout()->addWidget(line);
            m_text += QString(QLatin1Char('\n') + one.probe + QStringLiteral(": ") + said);
        }
    m_faults->setVisible(any);
}

} // namespace rickyard::views
