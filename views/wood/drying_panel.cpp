#include "views/wood/drying_panel.h"

#include "models/domain/quantities/units.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"
#include "views/wood/drying_chart.h"
#include "views/wood/wood_words.h"

#include <QVBoxLayout>

#include <cmath>

namespace rickyard::views {

namespace {

constexpr int kMostEvents = 4;

QString sentence(QString words)
{
    if (!words.isEmpty())
        words[0] = words.at(0).toUpper();
    return words;
}

} // namespace

DryingPanel::DryingPanel(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_answer(new TextLabel(QString(), TextStyle::Title)),
      m_chances(new TextLabel(QString(), TextStyle::Body)),
      m_basis(new TextLabel(QString(), TextStyle::Caption, Role::InkMuted)),
      m_chart(new DryingChart)
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(this).space(2));
    for (TextLabel *label : {m_answer, m_chances, m_basis})
        label->setWordWrap(true);
    column->addWidget(m_answer);
    column->addWidget(m_chart);
    column->addWidget(m_chances);
    column->addWidget(m_basis);
    connect(&context.answers, &workspace::AnswersService::updated, this, &DryingPanel::refresh);
    setVisible(false);
}

void DryingPanel::setLot(domain::RecordId lot)
{
    m_lot = lot;
    refresh();
}

QString DryingPanel::answerText() const
{
    return m_answer->text();
}

void DryingPanel::refresh()
{
    const auto &all = m_context.answers.answers().seasoning;
    const auto found = all.constFind(m_lot);
    setVisible(m_context.answers.ready() && found != all.constEnd());
    if (found == all.constEnd())
        return;
    const domain::SeasoningForecast &forecast = *found;
    const domain::Instant now = m_context.answers.answers().asOf;
    m_answer->setText(sentence(domain::readyWords(forecast)));
    m_chart->show(m_context.books(), forecast, now);
    const QStringList chances = chancesByEvent(m_context.books(), forecast, now, kMostEvents);
    m_chances->setText(chances.join(QLatin1Char('\n')));
    m_chances->setVisible(!chances.isEmpty());
    QString basis =
        tr("Drying time %1 days at %5 (%2 to %3), from %4 and what is usual for "
           "this wood, thickness and cover.")
            .arg(std::lround(forecast.tau))
            .arg(std::lround(forecast.tauLow))
            .arg(std::lround(forecast.tauHigh))
            .arg(forecast.readings.size() == 1 ? tr("one reading")
                                               : tr("%1 readings").arg(forecast.readings.size()))
            .arg(domain::show(domain::temperatureFromFahrenheit(70),
                              m_context.books().yard().metric ? domain::UnitSystem::Metric
                                                              : domain::UnitSystem::UsCustomary,
                              woodLocale(), 0));
    if (!forecast.assumptions.isEmpty())
        basis += QString(
            QLatin1Char(' ') +
            tr("Taken for granted: %1.").arg(forecast.assumptions.join(QStringLiteral("; "))));
    m_basis->setText(basis);
}

} // namespace rickyard::views
