#include "views/fire/cook_detail.h"

#include "models/exchange/answers_json.h"
#include "views/fire/cook_probes.h"
#include "views/fire/cook_timeline.h"
#include "views/fire/fire_words.h"
#include "views/fire/run_facts.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/numeral.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

QString fuelWords(const Books &books, const CookFuel &fuel)
{
    const FireWords words(books);
    QStringList lines;
    if (fuel.expected && fuel.lower && fuel.upper)
        lines << CookDetail::tr("Its pit usually takes %1 for such a cook (90 % of them: %2).")
                     .arg(words.heat(*fuel.expected).text(),
                          withUnit(rangeText(words.heat(*fuel.lower).value,
                                             words.heat(*fuel.upper).value),
                                   words.heat(*fuel.upper).unit));
    else if (fuel.missing.isEmpty())
        lines << CookDetail::tr("Its pit has no norm yet to compare it with.");
    lines << fuel.missing << fuel.assumptions;
    return lines.join(QLatin1Char(' '));
}

CookDetail::CookDetail(PageContext &context, QWidget *parent) : QWidget(parent), m_context(context)
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    auto *strip = new QWidget(this);
    auto *flow = new FlowLayout(strip);
    flow->setSpacingSteps(5, 2);
    m_length = new Numeral(strip);
    m_wood = new Numeral(strip);
    m_excess = new Numeral(strip);
    for (Numeral *numeral : {m_length, m_wood, m_excess})
        flow->addWidget(numeral);
    column->addWidget(strip);
    m_pill = new StatusPill(Role::Info, QString(), this);
    column->addWidget(m_pill, 0, Qt::AlignLeft);
    m_words = new TextLabel(QString(), TextStyle::Body, Role::InkMuted, this);
    m_words->setWordWrap(true);
    column->addWidget(m_words);
    m_probes = new CookProbes(context, this, this);
    column->addWidget(m_probes);
    connect(&context.answers, &workspace::AnswersService::updated, this, &CookDetail::refresh);
    hide();
}

void CookDetail::setCook(RecordId cook)
{
    m_cook = cook;
    refresh();
}

void CookDetail::refresh()
{
    const Books &books = m_context.books();
    const auto cook = books.cooks.constFind(m_cook);
    setVisible(cook != books.cooks.constEnd());
    if (cook == books.cooks.constEnd())
        return;
    const Instant now = m_context.verbs.now();
    const Instant end = cook->fireOut.value_or(now);
    m_length->setValue(QString::number(hours(end - cook->lit), 'f', 1), QStringLiteral("h"));
    m_length->setCaption(cook->fireOut ? tr("lighting to fire out") : tr("and still burning"));
    m_probes->setCook(m_cook);
    showFuel(*cook);
}

void CookDetail::showFuel(const Cook &cook)
{
    const Books &books = m_context.books();
    const FireWords words(books);
    const RunFacts facts = runFacts(books, cook, cook.fireOut.value_or(m_context.verbs.now()));
    const Figure heat = words.heat(facts.heat);
    m_wood->setValue(heat.value, heat.unit);
    m_wood->setCaption(tr("from %1 of wood as it was").arg(words.mass(facts.asIs).text()));
    m_excess->setValue(QString(), QString());
    m_excess->setCaption(tr("against the norm"));
    m_excess->setRole(Role::Ink);
    m_pill->setStatus(Role::Info, QString());
    QStringList lines = m_probes->timeline().problems();
    for (const CookFuel &fuel : m_context.answers.answers().fuel.cooks) {
        if (fuel.cook != m_cook)
            continue;
        if (fuel.excess) {
            const QString percent = words.percent(*fuel.excess);
            m_excess->setValue(percent.left(percent.size() - 2), QStringLiteral("%"));
            m_excess->setCaption(tr("against its pit's norm"));
        }
        const bool above = exchange::isFlagged(fuel);
        const bool below = fuel.complete() && fuel.lower && fuel.netHeat < *fuel.lower;
        if (fuel.excess)
            m_pill->setStatus(above   ? Role::Act
                              : below ? Role::Watch
                                      : Role::Good,
                              above   ? tr("Above its range")
                              : below ? tr("Below its range")
                                      : tr("Within its range"));
        lines << fuelWords(books, fuel);
    }
    m_words->setText(lines.join(QLatin1Char('\n')));
    m_words->setVisible(!lines.isEmpty());
}

} // namespace rickyard::views
