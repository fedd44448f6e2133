#include "views/fire/feed_pad.h"

#include "models/domain/wood/ledger.h"
#include "models/domain/wood/stock.h"
#include "views/fire/fire_words.h"
#include "views/fire/lot_picker.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/inline_question.h"
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
    m_ranOut = new InlineQuestion(tr("The count is off: feed it"), tr("It is another lot"), this);
    connect(m_ranOut, &InlineQuestion::wentOn, this, [this] {
        m_countIsOff.insert(m_lot->lot());
        m_ranOut->dismiss();
        feed(m_askedPieces);
    });
    connect(m_ranOut, &InlineQuestion::wentBack, this, [this] {
        m_ranOut->dismiss();
        m_lot->setFocus(Qt::OtherFocusReason);
        m_lot->showPopup();
    });
    column->addWidget(m_ranOut);
}

bool FeedPad::wouldRunOut(int pieces, const std::optional<domain::Mass> &weight) const
{
    domain::Feed feed;
    feed.cook = m_cook;
    feed.lot = m_lot->lot();
    feed.time = m_context.verbs.now();
    feed.pieces = pieces;
    feed.weight = weight;
    const auto dry = domain::dryMassOfFeed(m_context.books(), feed);
    if (!dry)
        return false; // the feed itself says what is wrong
    const domain::Mass left =
        domain::lotStockAt(m_context.books(), m_lot->lot(), feed.time).dryMass;
    return left < dry->dryMass;
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
    if (!m_countIsOff.contains(m_lot->lot()) && wouldRunOut(pieces, weight)) {
        m_askedPieces = pieces;
        m_ranOut->ask(tr("By the books %1 has just run out. Is the count off, or does this wood "
                         "come from another lot?")
                          .arg(m_context.books().lots.value(m_lot->lot()).name));
        return;
    }
    m_ranOut->dismiss();
    put(pieces, weight);
}

void FeedPad::put(int pieces, const std::optional<domain::Mass> &weight)
{
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
