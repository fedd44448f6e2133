#include "views/fire/feed_pad.h"

#include "views/fire/fire_words.h"
#include "views/fire/lot_picker.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/tap_button.h"
#include "views/widgets/unit_line_edit.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::Dimension;

FeedPad::FeedPad(PageContext &context, domain::RecordId cook, QWidget *parent)
    : QWidget(parent), m_context(context), m_cook(cook)
{
    build();
    refresh();
}

void FeedPad::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    m_one = new TapButton(tr("Feed 1 split"), this);
    m_one->setKind(ButtonKind::Primary);
    m_one->setIconName(QStringLiteral("fire"));
    m_one->setKey(QKeySequence(Qt::Key_F));
    m_one->setMinimumHeight(look.px(124));
    connect(m_one, &TapButton::clicked, this, [this] { feed(1); });
    column->addWidget(m_one);

    auto *row = new QHBoxLayout;
    row->setSpacing(look.space(2));
    for (int pieces = 2; pieces <= 6; ++pieces) {
        auto *button = new QPushButton(QString::number(pieces), this);
        button->setFont(look.font(TextStyle::Heading));
        button->setMinimumHeight(look.px(56));
        button->setAccessibleName(tr("Feed %1 splits").arg(pieces));
        button->setToolTip(tr("Feed %1 splits: key %1").arg(pieces));
        button->setShortcut(QKeySequence(Qt::Key_0 + pieces));
        connect(button, &QPushButton::clicked, this, [this, pieces] { feed(pieces); });
        row->addWidget(button, 1);
        m_more << button;
    }
    column->addLayout(row);

    auto *from = new QHBoxLayout;
    from->setSpacing(look.space(3));
    m_lot = new LotPicker(m_context, this);
    connect(m_lot, &QComboBox::currentIndexChanged, this, &FeedPad::lotChanged);
    from->addWidget(new FieldRow(tr("From lot"), m_lot, this), 1);
    m_weight = new UnitLineEdit(FireWords(m_context.books()).unit(Dimension::Mass).symbol, this);
    m_weight->setAccessibleName(tr("Weight of the next feed"));
    m_weight->setMinimumHeight(look.px(44));
    connect(m_weight, &QLineEdit::textEdited, this, [this] { m_weightRow->clearProblem(); });
    m_weightRow = new FieldRow(tr("Weighed"), m_weight, this);
    m_weightRow->setOptional(true);
    m_weightRow->setFixedWidth(look.px(130));
    from->addWidget(m_weightRow);
    column->addLayout(from);
}

void FeedPad::refresh()
{
    m_lot->refill();
    const bool can = !m_context.readOnly();
    m_one->setEnabled(can);
    for (QPushButton *button : std::as_const(m_more))
        button->setEnabled(can);
}

void FeedPad::chooseLot(domain::RecordId lot)
{
    m_lot->choose(lot);
}

domain::RecordId FeedPad::lot() const
{
    return m_lot->lot();
}

void FeedPad::setLine(const QString &line)
{
    m_one->setSubLabel(line);
}

void FeedPad::focusFeed()
{
    m_one->setFocus(Qt::OtherFocusReason);
}

bool FeedPad::typedWeight(std::optional<domain::Mass> &weight)
{
    const QString text = m_weight->text().trimmed();
    if (text.isEmpty())
        return true;
    const FireWords words(m_context.books());
    const domain::Unit &unit = words.unit(Dimension::Mass);
    const auto parsed = domain::parseQuantity(text, Dimension::Mass, unit, words.locale());
    if (!parsed) {
        m_weightRow->setProblem(tr("“%1” is not a weight in %2.").arg(text, unit.symbol));
        m_weight->setFocus(Qt::OtherFocusReason);
        return false;
    }
    weight = domain::Mass::ofBase(parsed->base);
    return true;
}

void FeedPad::feed(int pieces)
{
    if (m_lot->lot() == 0) {
        Q_EMIT refused(tr("Choose the lot that the wood comes from."));
        return;
    }
    std::optional<domain::Mass> weight;
    if (!typedWeight(weight))
        return;
    const auto done = m_context.verbs.feed(m_cook, m_lot->lot(), pieces, weight);
    if (!done) {
        for (const domain::Problem &problem : done.problems())
            if (problem.field == QLatin1String("weight"))
                m_weightRow->setProblem(problem.message);
        Q_EMIT refused(done.message());
        return;
    }
    m_weight->clear();
    Q_EMIT fed(done.value());
}

} // namespace rickyard::views
