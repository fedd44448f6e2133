#include "views/fire/wood_measure_panel.h"

#include "models/domain/fire/wood_measure.h"
#include "views/fire/fire_words.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/text_label.h"

#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

QString wayName(WoodWay way)
{
    switch (way) {
    case WoodWay::Tally:
        return WoodMeasurePanel::tr("Tally");
    case WoodWay::Crate:
        return WoodMeasurePanel::tr("Crate");
    case WoodWay::Stack:
        break;
    }
    return WoodMeasurePanel::tr("Stack");
}

} // namespace

WoodMeasurePanel::WoodMeasurePanel(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context),
      m_answer(new TextLabel(QString(), TextStyle::BodyStrong, Role::Ink, this)),
      m_ways(new TextLabel(QString(), TextStyle::Body, Role::InkMuted, this)),
      m_trueUp(new QPushButton(icon(QStringLiteral("scale")), tr("True up the ledger"), this))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(this).space(2));
    for (TextLabel *label : {m_answer, m_ways}) {
        label->setWordWrap(true);
        column->addWidget(label);
    }
    m_trueUp->setAccessibleName(tr("Bring the ledger to what was measured on this cook"));
    column->addWidget(m_trueUp, 0, Qt::AlignLeft);
    connect(m_trueUp, &QPushButton::clicked, this, &WoodMeasurePanel::trueUp);
    connect(&context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                for (const TableId table : {TableId::Cook, TableId::Feed, TableId::Movement,
                                            TableId::Lot, TableId::MoistureReading})
                    if (changes.touches(table)) {
                        refresh();
                        return;
                    }
            });
    hide();
}

void WoodMeasurePanel::setCook(RecordId cook)
{
    m_cook = cook;
    refresh();
}

QString WoodMeasurePanel::words() const
{
    return QString(m_answer->text() + QLatin1Char('\n') + m_ways->text());
}

void WoodMeasurePanel::refresh()
{
    const Books &books = m_context.books();
    const auto cook = books.cooks.constFind(m_cook);
    if (cook == books.cooks.cend()) {
        hide();
        return;
    }
    const WoodReckoning reckoning = woodReckoning(books, *cook);
    const bool more = reckoning.ways.size() > 1 || !reckoning.problems.isEmpty() ||
                      (reckoning.ways.size() == 1 && reckoning.ways.first().way != WoodWay::Tally);
    setVisible(more);
    if (!more)
        return;
    const FireWords words(books);
    const auto give = [&](Mass dry, Mass error) {
        return tr("%1 ± %2").arg(words.mass(dry).value, words.mass(error).text());
    };
    QStringList lines;
    for (const WoodEstimate &way : reckoning.ways)
        lines << tr("%1: %2 of oven-dry wood (%3)")
                     .arg(wayName(way.way), give(way.dry, way.error), way.words);
    lines << tr("Ledger: %1").arg(words.mass(reckoning.booked).text()) << reckoning.problems;
    m_ways->setText(lines.join(QLatin1Char('\n')));
    QString answer = reckoning.dry ? tr("Measured together: %1 of oven-dry wood.")
                                         .arg(give(*reckoning.dry, reckoning.error))
                                   : tr("The wood of this cook cannot be measured yet.");
    if (reckoning.dry && !reckoning.agree())
        answer += tr(" The ways do not agree: wood came from elsewhere, feeds were not written "
                     "down, or a figure is wrong.");
    m_answer->setText(answer);
    m_trueUp->setVisible(reckoning.dry.has_value());
    m_trueUp->setEnabled(!m_context.readOnly() &&
                         !trueUpOf(books, *cook, reckoning, cook->lit).isEmpty());
}

void WoodMeasurePanel::trueUp()
{
    const Mass before =
        woodReckoning(m_context.books(), m_context.books().cooks.value(m_cook)).booked;
    const auto done = m_context.verbs.trueUp(m_cook);
    if (!done) {
        m_context.refuse(done.problems());
        return;
    }
    const FireWords words(m_context.books());
    const Mass after =
        woodReckoning(m_context.books(), m_context.books().cooks.value(m_cook)).booked;
    m_context.say(tr("The ledger of this cook went from %1 to %2 of oven-dry wood.")
                      .arg(words.mass(before).text(), words.mass(after).text()));
}

} // namespace rickyard::views
