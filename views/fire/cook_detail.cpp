#include "views/fire/cook_detail.h"

#include "views/fire/cook_changes_panel.h"
#include "views/fire/cook_probes.h"
#include "views/fire/cook_timeline.h"
#include "views/fire/cook_wood_panel.h"
#include "views/fire/fire_words.h"
#include "views/fire/run_facts.h"
#include "views/fire/wood_measure_panel.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/numeral.h"
#include "views/widgets/section_tabs.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

QString fuelWords(const Books &books, const CookFuel &fuel)
{
    const FireWords words(books);
    QStringList lines;
    if (fuel.expected && fuel.lower && fuel.upper)
        lines << CookDetail::tr("From earlier cooks its pit should have taken %1 (90 % sure: %2).")
                     .arg(words.heat(*fuel.expected).text(),
                          withUnit(rangeText(words.heat(*fuel.lower).value,
                                             words.heat(*fuel.upper).value),
                                   words.heat(*fuel.upper).unit));
    else if (fuel.missing.isEmpty())
        lines << CookDetail::tr("There is nothing yet to compare it with.");
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
    addCompare(column);
    m_words = new TextLabel(QString(), TextStyle::Body, Role::InkMuted, this);
    m_words->setWordWrap(true);
    m_probes = new CookProbes(context, this, this);
    addParts(column);
    connect(&context.answers, &workspace::AnswersService::updated, this, &CookDetail::refresh);
    hide();
}

void CookDetail::addCompare(QVBoxLayout *column)
{
    auto *beside = new QHBoxLayout;
    beside->addWidget(m_pill);
    beside->addStretch(1);
    m_compare = new QPushButton(this);
    m_compare->setProperty("role", "quiet");
    connect(m_compare, &QPushButton::clicked, this, [this] {
        if (m_pairSecond != 0)
            Q_EMIT compareAsked(m_pairFirst, m_pairSecond);
        else
            Q_EMIT compareAsked(m_cook, 0);
    });
    beside->addWidget(m_compare);
    column->addLayout(beside);
    setPair(0, 0);
}

void CookDetail::setPair(RecordId first, RecordId second)
{
    m_pairFirst = first;
    m_pairSecond = second;
    const bool two = second != 0;
    m_compare->setText(two ? tr("Compare the two") : tr("Compare with…"));
    m_compare->setAccessibleName(two ? tr("Compare the two chosen cooks")
                                     : tr("Compare this cook with another"));
    m_compare->setToolTip(tr("Two cooks chosen in the list (Ctrl and a click) are compared with "
                             "each other; one alone with the cook most like it."));
}

void CookDetail::addParts(QVBoxLayout *column)
{
    m_parts = new SectionTabs(this);
    auto *content = new QWidget;
    auto *woodColumn = new QVBoxLayout(content);
    woodColumn->setContentsMargins(0, theme(this).space(2), theme(this).space(2), 0);
    woodColumn->setSpacing(theme(this).space(3));
    m_woodPanel = new CookWoodPanel(m_context, content);
    woodColumn->addWidget(m_woodPanel);
    m_measures = new WoodMeasurePanel(m_context, content);
    woodColumn->addWidget(m_measures);
    woodColumn->addWidget(m_words);
    woodColumn->addStretch(1);
    auto *wood = new QScrollArea(this);
    wood->setWidgetResizable(true);
    wood->setFrameShape(QFrame::NoFrame);
    wood->setAccessibleName(tr("Wood and money of this cook"));
    wood->setWidget(content);
    wood->viewport()->setAutoFillBackground(false);
    content->setAutoFillBackground(false);
    m_changes = new CookChangesPanel(m_context, this);
    m_parts->addSection(tr("Timeline"), m_probes);
    m_parts->addSection(tr("Wood and money"), wood);
    const int changes = m_parts->addSection(tr("Changes"), m_changes);
    connect(m_changes, &CookChangesPanel::countChanged, this, [this, changes](int count) {
        m_parts->setFigure(changes, count == 0 ? QString() : QString::number(count));
    });
    // As tall as the timeline: their tables scroll.
    for (QWidget *part : {static_cast<QWidget *>(wood), static_cast<QWidget *>(m_changes)})
        part->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Ignored);
    column->addWidget(m_parts);
}

void CookDetail::setCook(RecordId cook)
{
    m_cook = cook;
    m_changes->setCook(cook);
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
    m_woodPanel->setCook(m_cook);
    m_measures->setCook(m_cook);
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
    m_excess->setCaption(tr("against what was expected"));
    m_excess->setRole(Role::Ink);
    m_pill->setStatus(Role::Info, QString());
    QStringList lines = m_probes->timeline().problems();
    for (const CookFuel &fuel : m_context.answers.answers().fuel.cooks) {
        if (fuel.cook != m_cook)
            continue;
        if (fuel.excess) {
            const QString percent = words.percent(*fuel.excess);
            m_excess->setValue(percent.left(percent.size() - 2), QStringLiteral("%"));
            m_excess->setCaption(tr("against what was expected"));
        }
        const bool above = fuel.high();
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
