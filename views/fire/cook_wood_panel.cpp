#include "views/fire/cook_wood_panel.h"

#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "views/fire/fire_words.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

CookWoodPanel::CookWoodPanel(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_lines(new QVBoxLayout(this))
{
    m_lines->setContentsMargins(0, 0, 0, 0);
    m_lines->setSpacing(theme(this).space(2));
    setAccessibleName(tr("Wood and money of this cook"));
}

QString CookWoodPanel::figuresOf(const CookWoodLine &line) const
{
    const FireWords words(m_context.books());
    QStringList parts;
    if (line.pieces)
        parts << (*line.pieces == 1 ? tr("1 split") : tr("%1 splits").arg(*line.pieces));
    if (line.asIs)
        parts << tr("%1 as it was").arg(words.mass(*line.asIs).text());
    parts << (line.moisture ? tr("%1 moisture, dry basis")
                                  .arg(withUnit(formatNumber(100 * dryFraction(*line.moisture), 1,
                                                             words.locale()),
                                                QStringLiteral("%")))
                            : tr("moisture not known"));
    parts << tr("%1 dry").arg(words.mass(line.dryMass).text()) << words.heat(line.netHeat).text();
    return parts.join(QStringLiteral(" · "));
}

void CookWoodPanel::addLine(const QString &name, const CookWoodLine &line)
{
    auto *block = new QWidget(this);
    auto *column = new QVBoxLayout(block);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    auto *head = new QHBoxLayout;
    auto *title = new TextLabel(name, TextStyle::BodyStrong, Role::Ink, block);
    title->setWordWrap(true);
    head->addWidget(title, 1);
    head->addWidget(new TextLabel(line.cents ? moneyWords(*line.cents, wordingOf(m_context.books()))
                                             : tr("no price"),
                                  line.cents ? TextStyle::Figures : TextStyle::Caption,
                                  line.cents ? Role::Ink : Role::InkMuted, block));
    column->addLayout(head);
    auto *figures = new TextLabel(figuresOf(line), TextStyle::Caption, Role::InkMuted, block);
    figures->setWordWrap(true);
    column->addWidget(figures);
    m_lines->addWidget(block);
}

void CookWoodPanel::setCook(RecordId cook)
{
    clearLayout(m_lines);
    const Books &books = m_context.books();
    const CookWood wood = cookWood(books, cook, m_context.verbs.now());
    for (const CookWoodLine &line : wood.lots)
        addLine(books.lots.value(line.lot).name, line);
    const bool somePrice = wood.unpriced < wood.lots.size();
    if (wood.lots.size() > 1) {
        CookWoodLine whole = wood.whole;
        if (somePrice)
            whole.cents = wood.cents;
        addLine(tr("Together"), whole);
    }
    QStringList notes;
    if (wood.lots.isEmpty())
        notes << tr("No wood is logged for this cook.");
    else if (somePrice)
        notes << tr("The cost is the lot's price with delivery, by the share of its dry wood that "
                    "was burned.");
    else
        notes << tr("No price is known: enter it at the lot.");
    if (somePrice && wood.unpriced > 0)
        notes << tr("A lot without a price is not in the sum.");
    if (wood.whole.assumed)
        notes << tr("Some weight or moisture is assumed.");
    auto *note =
        new TextLabel(notes.join(QLatin1Char(' ')), TextStyle::Caption, Role::InkMuted, this);
    note->setWordWrap(true);
    m_lines->addWidget(note);
}

} // namespace rickyard::views
