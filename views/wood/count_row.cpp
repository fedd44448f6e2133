#include "views/wood/count_row.h"

#include "models/domain/answers/answers.h"
#include "models/domain/quantities/units.h"
#include "models/domain/wood/ledger.h"
#include "models/domain/wood/stock.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/text_label.h"
#include "views/widgets/unit_line_edit.h"
#include "views/wood/stack_fields.h"
#include "views/wood/wood_words.h"

#include <QComboBox>
#include <QGridLayout>
#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

using domain::CountWay;
using domain::Mass;
using domain::RecordId;

namespace {

constexpr int kCausesShown = 3;

const domain::Unit &weightUnit(bool metric)
{
    return *domain::findUnit(domain::Dimension::Mass,
                             metric ? QStringLiteral("kg") : QStringLiteral("lb"));
}

QString signedMass(Mass mass, bool metric)
{
    const QString amount = massAmount(mass < Mass() ? -mass : mass, metric).text();
    return mass < Mass() ? CountRow::tr("%1 less than the books").arg(amount)
                         : CountRow::tr("%1 more than the books").arg(amount);
}

} // namespace

CountRow::CountRow(PageContext &context, RecordId lot, QWidget *parent)
    : QWidget(parent), m_context(context), m_lot(lot)
{
    build();
    refresh();
    showWay();
}

void CountRow::build()
{
    const Theme &look = theme(this);
    auto *grid = new QGridLayout(this);
    grid->setContentsMargins(0, look.space(4), 0, look.space(4));
    grid->setHorizontalSpacing(look.space(5));
    grid->setVerticalSpacing(look.space(1));
    auto *who = new QVBoxLayout;
    who->setSpacing(look.px(2));
    m_place = new TextLabel(QString(), TextStyle::BodyStrong);
    m_place->setWordWrap(true);
    m_name = new TextLabel(QString(), TextStyle::Body, Role::InkMuted);
    m_name->setWordWrap(true);
    who->addWidget(m_place);
    who->addWidget(m_name);
    who->addStretch(1);
    grid->addLayout(who, 0, 0);

    auto *fields = new QVBoxLayout;
    fields->setSpacing(look.space(2));
    m_way = new QComboBox;
    m_way->addItems({tr("Stack"), tr("Splits"), tr("Weight as it is"), tr("Nothing left")});
    fields->addWidget(m_way);
    auto *box = new QWidget;
    auto *inside = new QVBoxLayout(box);
    inside->setContentsMargins(0, 0, 0, 0);
    inside->setSpacing(0);
    m_stacks = new StackFields(m_context);
    m_figure = new UnitLineEdit(QString());
    inside->addWidget(m_stacks);
    inside->addWidget(m_figure);
    m_row = new FieldRow(tr("What is there"), box);
    fields->addWidget(m_row);
    fields->addStretch(1);
    grid->addLayout(fields, 0, 1);

    auto *answer = new QVBoxLayout;
    answer->setSpacing(look.space(1));
    m_words = new TextLabel(QString(), TextStyle::BodyStrong);
    m_basis = new TextLabel(QString(), TextStyle::Caption, Role::InkMuted);
    answer->addWidget(m_words);
    for (int i = 0; i < kCausesShown; ++i) {
        m_causes << new TextLabel(QString());
        answer->addWidget(m_causes.last());
    }
    answer->addWidget(m_basis);
    for (TextLabel *label : QVector<TextLabel *>{m_words, m_basis} + m_causes)
        label->setWordWrap(true);
    answer->addStretch(1);
    grid->addLayout(answer, 0, 2);
    grid->setColumnStretch(0, 4);
    grid->setColumnStretch(1, 7);
    grid->setColumnStretch(2, 8);
    connect(m_way, &QComboBox::activated, this, [this] {
        showWay();
        Q_EMIT edited();
    });
    connect(m_stacks, &StackFields::edited, this, [this] {
        watchKeys();
        m_row->clearProblem();
        compare();
        Q_EMIT edited();
    });
    connect(m_figure, &QLineEdit::textEdited, this, [this] {
        m_row->clearProblem();
        compare();
        Q_EMIT edited();
    });
    watchKeys();
}

// Return goes on to the next field, as on a pad of figures.
void CountRow::watchKeys()
{
    for (UnitLineEdit *edit : m_stacks->edits()) {
        edit->removeEventFilter(this);
        edit->installEventFilter(this);
    }
    m_figure->removeEventFilter(this);
    m_figure->installEventFilter(this);
}

bool CountRow::eventFilter(QObject *watched, QEvent *event)
{
    if (event->type() == QEvent::KeyPress) {
        const auto *key = static_cast<QKeyEvent *>(event);
        if (key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter) {
            // Past the buttons: they are for Tab.
            for (int i = 0; i < 8; ++i) {
                focusNextChild();
                const QWidget *at = window()->focusWidget();
                if (at == nullptr || !at->inherits("QAbstractButton"))
                    break;
            }
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void CountRow::refresh()
{
    const domain::Lot lot = m_context.books().lots.value(m_lot);
    const QString wood = m_context.books().species.value(lot.species).name;
    m_place->setText(lot.place.isEmpty() ? tr("No place given") : lot.place);
    m_name->setText(lot.name.contains(wood, Qt::CaseInsensitive)
                        ? lot.name
                        : tr("%1, %2").arg(lot.name, wood.toLower()));
    m_way->setAccessibleName(tr("How %1 is counted").arg(lot.name));
    m_stacks->setAccessibleName(tr("Stacks of %1").arg(lot.name));
    m_figure->setAccessibleName(tr("Splits or weight of %1").arg(lot.name));
    if (!started())
        m_stacks->setStickLength(lot.stickLength);
    compare();
}

void CountRow::clear()
{
    m_stacks->show({});
    m_figure->clear();
    m_row->clearProblem();
    m_way->setCurrentIndex(0);
    m_stacks->setStickLength({});
    m_stacks->setStickLength(m_context.books().lots.value(m_lot).stickLength);
    showWay();
}

void CountRow::showWay()
{
    const auto way = static_cast<CountWay>(m_way->currentIndex());
    m_row->setVisible(way != CountWay::Nothing);
    m_stacks->setVisible(way == CountWay::Stack);
    m_figure->setVisible(way == CountWay::Splits || way == CountWay::Weight);
    m_figure->setUnit(way == CountWay::Splits ? tr("splits")
                                              : weightUnit(m_context.books().yard().metric).symbol);
    m_row->clearProblem();
    compare();
}

bool CountRow::started() const
{
    switch (static_cast<CountWay>(m_way->currentIndex())) {
    case CountWay::Stack:
        return !m_stacks->isEmpty();
    case CountWay::Splits:
    case CountWay::Weight:
        return !m_figure->text().trimmed().isEmpty();
    case CountWay::Nothing:
        break;
    }
    return true;
}

std::optional<domain::RickCount> CountRow::count(QString *problem) const
{
    if (!started())
        return std::nullopt;
    domain::RickCount count;
    count.lot = m_lot;
    count.way = static_cast<CountWay>(m_way->currentIndex());
    const QString text = m_figure->text().trimmed();
    if (count.way == CountWay::Stack) {
        QString wrong;
        count.stacks = m_stacks->stacks(&wrong);
        if (!wrong.isEmpty()) {
            if (problem != nullptr)
                *problem = wrong;
            return std::nullopt;
        }
    } else if (count.way == CountWay::Splits) {
        bool whole = false;
        count.splits = woodLocale().toLongLong(text, &whole);
        if (!whole) {
            if (problem != nullptr)
                *problem = tr("“%1” is not a number of splits: write a whole number, such as 48.")
                               .arg(text);
            return std::nullopt;
        }
    } else if (count.way == CountWay::Weight) {
        const domain::Unit &unit = weightUnit(m_context.books().yard().metric);
        const auto parsed =
            domain::parseQuantity(text, domain::Dimension::Mass, unit, woodLocale());
        if (!parsed) {
            if (problem != nullptr)
                *problem = tr("“%1” is not a weight: write a number of %2.").arg(text, unit.symbol);
            return std::nullopt;
        }
        count.weight = Mass::ofBase(parsed->base);
    }
    return count;
}

std::optional<domain::Moisture> CountRow::moistureNow() const
{
    const auto &seasoning = m_context.answers.answers().seasoning;
    const auto found = seasoning.constFind(m_lot);
    if (!m_context.answers.ready() || found == seasoning.constEnd() || found->curve.isEmpty())
        return std::nullopt;
    return domain::moistureFromDryFraction(found->at(found->today).middle / 100);
}

std::optional<domain::CountDrift> CountRow::workOut() const
{
    const auto counted = count();
    if (!counted)
        return std::nullopt;
    const domain::Books &books = m_context.books();
    const domain::Instant now = m_context.verbs.now();
    const auto wood = domain::countedWood(books, *counted, now);
    if (!wood)
        return std::nullopt;
    return domain::countDrift(books, m_lot, wood.value(), counted->way, now, moistureNow(),
                              domain::wordingOf(books));
}

void CountRow::compare()
{
    const domain::Books &books = m_context.books();
    const bool metric = books.yard().metric;
    const Mass book = domain::lotStockAt(books, m_lot, m_context.verbs.now()).dryMass;
    m_drift = workOut();
    const auto &found = m_drift;
    for (TextLabel *cause : std::as_const(m_causes))
        cause->setVisible(false);
    m_basis->setVisible(found.has_value());
    if (!found) {
        m_words->setLook(TextStyle::Body, Role::InkMuted);
        m_words->setText(book < Mass()
                             ? tr("Books: %1 less than nothing: more was burned than came.")
                                   .arg(massAmount(-book, metric).text())
                             : tr("Books: %1 of dry wood.").arg(massAmount(book, metric).text()));
        // A count below nothing is refused as it is typed, in words.
        if (const auto counted = count())
            if (const auto wood = domain::countedWood(books, *counted, m_context.verbs.now());
                !wood)
                m_row->setProblem(wood.message());
        return;
    }
    m_words->setLook(TextStyle::BodyStrong, Role::Ink);
    const QString share =
        found->book.base() > 0
            ? QString(QStringLiteral(" (") +
                      trueMinus(domain::formatNumber(100 * (found->drift() / found->book), 0,
                                                     woodLocale())) +
                      QChar(0x202F) + QStringLiteral("%)"))
            : QString();
    m_words->setText(tr("Books %1, count %2: %3%4.")
                         .arg(massAmount(found->book, metric).text(),
                              massAmount(found->counted, metric).text(),
                              signedMass(found->drift(), metric), share));
    for (int i = 0; i < std::min<qsizetype>(kCausesShown, found->clues.size()); ++i) {
        const domain::DriftClue &clue = found->clues.at(i);
        const QString word = domain::shareWord(clue.share);
        m_causes.at(i)->setText(
            QString(word.left(1).toUpper() + word.mid(1) + QStringLiteral(": ") + clue.words));
        m_causes.at(i)->setVisible(true);
    }
    m_basis->setText(tr("The count itself is good to within about %1.")
                         .arg(massAmount(found->error * 2, metric).text()));
}

QString CountRow::words() const
{
    return m_words->text();
}

QString CountRow::causes() const
{
    QStringList shown;
    for (const TextLabel *cause : m_causes)
        if (!cause->isHidden())
            shown << cause->text();
    return shown.join(QLatin1Char('\n'));
}

void CountRow::showProblem(const QString &message)
{
    m_row->setProblem(message);
}

void CountRow::focusFirst()
{
    if (static_cast<CountWay>(m_way->currentIndex()) == CountWay::Stack)
        m_stacks->edits().first()->setFocus(Qt::OtherFocusReason);
    else if (m_figure->isVisible())
        m_figure->setFocus(Qt::OtherFocusReason);
    else
        m_way->setFocus(Qt::OtherFocusReason);
}

void CountRow::setHairline(bool shown)
{
    m_hairline = shown;
    update();
}

void CountRow::paintEvent(QPaintEvent *)
{
    if (!m_hairline)
        return;
    QPainter painter(this);
    painter.fillRect(QRect(0, 0, width(), 1), theme(this).color(Role::Hairline));
}

} // namespace rickyard::views
