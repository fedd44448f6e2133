#include "views/wood/order_sheet.h"

#include "models/domain/answers/answers.h"
#include "models/domain/plan/order_life.h"
#include "models/domain/plan/scorecard.h"
#include "models/domain/plan/supply.h"
#include "models/items/wording.h"
#include "views/records/field_editor.h"
#include "views/records/field_set.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/text_label.h"

#include <QGridLayout>
#include <QPushButton>
#include <QShortcut>

namespace rickyard::views {

using domain::Problem;
using domain::Problems;
using domain::RecordId;
using domain::TableId;
using domain::WoodOrder;

namespace {

// What came last from them, else what is booked most often: something to start from.
RecordId likelySpecies(const domain::Books &books, RecordId supplier)
{
    RecordId species = 0;
    domain::Instant latest;
    for (const domain::Lot &lot : books.lots)
        if (lot.supplier == supplier && (species == 0 || lot.received > latest)) {
            species = lot.species;
            latest = lot.received;
        }
    for (const domain::Lot &lot : books.lots)
        if (species == 0)
            species = lot.species;
    return species != 0 || books.species.isEmpty() ? species : books.species.firstKey();
}

RecordId likelySupplier(const domain::Books &books)
{
    RecordId supplier = 0;
    domain::Instant latest;
    for (const domain::Lot &lot : books.lots)
        if (lot.supplier && books.suppliers.contains(*lot.supplier) &&
            (supplier == 0 || lot.received > latest)) {
            supplier = *lot.supplier;
            latest = lot.received;
        }
    return supplier != 0 || books.suppliers.isEmpty() ? supplier : books.suppliers.firstKey();
}

} // namespace

WoodOrder draftOf(const domain::Books &books, RecordId supplierId, RecordId species, double count,
                  QDate today)
{
    const domain::Supplier supplier = books.suppliers.value(supplierId);
    WoodOrder order;
    order.supplier = supplierId;
    order.species = species;
    order.unit = supplier.unit;
    order.count = domain::Plain::rounded(count * 1e6);
    order.promisedMoisture = supplier.promised;
    order.price = domain::usualPrice(books, order);
    order.promised = today.addDays(domain::leadTimeOf(books, supplierId).days());
    return order;
}

OrderSheet::OrderSheet(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context),
      m_fields(new FieldSet(context, TableId::WoodOrder, this)),
      m_base(domain::emptyRow(TableId::WoodOrder))
{
    build();
    connect(m_fields, &FieldSet::edited, this, &OrderSheet::heed);
    auto *leave = new QShortcut(QKeySequence(Qt::Key_Escape), this);
    leave->setContext(Qt::WidgetWithChildrenShortcut);
    connect(leave, &QShortcut::activated, this, &OrderSheet::closed);
    auto *quickSave = new QShortcut(QKeySequence::Save, this);
    quickSave->setContext(Qt::WidgetWithChildrenShortcut);
    connect(quickSave, &QShortcut::activated, this, &OrderSheet::save);
}

void OrderSheet::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, look.space(2));
    column->setSpacing(look.space(3));
    auto *grid = new QGridLayout;
    grid->setHorizontalSpacing(look.space(3));
    grid->setVerticalSpacing(look.space(2));
    const QVector<QPair<const char *, QString>> fields{
        {"supplier", QString()},        {"species", tr("Wood")},
        {"count", tr("How many")},      {"sold_by", tr("Of which unit")},
        {"price", tr("Price in all")},  {"promised_moisture", tr("Moisture wished")},
        {"promised", tr("Day wished")}, {"note", QString()}};
    for (int i = 0; i < fields.size(); ++i) {
        FieldRow *row = m_fields->add(QString::fromLatin1(fields.at(i).first), fields.at(i).second);
        grid->addWidget(row, i / 4, i % 4, Qt::AlignTop);
    }
    for (int i = 0; i < 4; ++i)
        grid->setColumnStretch(i, 1);
    column->addLayout(grid);
    m_amount = new TextLabel(QString(), TextStyle::BodyStrong);
    m_amount->setWordWrap(true);
    m_record = new TextLabel(QString(), TextStyle::Body, Role::InkMuted);
    m_record->setWordWrap(true);
    m_notice = new NoticeBar;
    column->addWidget(m_amount);
    column->addWidget(m_record);
    column->addWidget(m_notice);
    auto *buttons = new QHBoxLayout;
    buttons->setSpacing(look.space(2));
    m_save = new QPushButton(tr("Keep the draft"));
    m_save->setAccessibleName(tr("Keep this order as a draft"));
    m_save->setEnabled(!m_context.readOnly());
    auto *close = new QPushButton(tr("Close"));
    close->setProperty("role", "quiet");
    close->setAccessibleName(tr("Close without an order"));
    buttons->addWidget(m_save);
    buttons->addWidget(close);
    buttons->addStretch(1);
    column->addLayout(buttons);
    connect(m_save, &QPushButton::clicked, this, &OrderSheet::save);
    connect(close, &QPushButton::clicked, this, &OrderSheet::closed);
}

void OrderSheet::start()
{
    const domain::Books &books = m_context.books();
    const RecordId supplier = likelySupplier(books);
    const QDate today = items::toLocal(books, m_context.verbs.now()).date();
    start(draftOf(books, supplier, likelySpecies(books, supplier), 1, today));
}

void OrderSheet::start(const WoodOrder &order)
{
    m_base = domain::toRow(order);
    m_base.id = 0;
    for (const char *key : {"supplier", "species"})
        if (domain::integerOr(domain::valueOf(m_base, QString::fromLatin1(key)), 0) == 0)
            domain::setValue(m_base, QString::fromLatin1(key), std::monostate{});
    m_priceTyped = false;
    m_fields->show(m_base);
    m_notice->dismiss();
    refresh();
    m_fields->editor(QStringLiteral("supplier"))->inner()->setFocus(Qt::OtherFocusReason);
}

WoodOrder OrderSheet::order(Problems *problems) const
{
    domain::Row row = m_base;
    const Problems unread = m_fields->readInto(row);
    if (problems != nullptr)
        *problems = unread;
    return domain::fromRow<WoodOrder>(row);
}

void OrderSheet::heed(const QString &key)
{
    m_notice->dismiss();
    if (key == QStringLiteral("supplier"))
        takeSupplier();
    if (key == QStringLiteral("price"))
        m_priceTyped = true;
    if (key == QStringLiteral("count") || key == QStringLiteral("sold_by"))
        takePrice();
    refresh();
}

// Their unit, promise, price and usual time.
void OrderSheet::takeSupplier()
{
    const domain::Books &books = m_context.books();
    const WoodOrder now = order();
    const QDate today = items::toLocal(books, m_context.verbs.now()).date();
    const double count = now.count ? domain::number(*now.count) : 1;
    const domain::Row terms =
        domain::toRow(draftOf(books, now.supplier, now.species, count, today));
    for (const char *key : {"sold_by", "promised_moisture", "promised"})
        m_fields->setValue(QString::fromLatin1(key),
                           domain::valueOf(terms, QString::fromLatin1(key)));
    takePrice();
}

void OrderSheet::takePrice()
{
    if (!m_priceTyped)
        m_fields->setValue(QStringLiteral("price"),
                           domain::toValue(domain::usualPrice(m_context.books(), order())));
}

QString OrderSheet::amount() const
{
    return m_amount->text();
}

void OrderSheet::refresh()
{
    const domain::Books &books = m_context.books();
    const domain::Wording wording = domain::wordingOf(books);
    const WoodOrder now = order();
    const bool full = now.count && now.count->base() > 0;
    m_amount->setText(full ? tr("%1 of %2")
                                 .arg(domain::orderAmountWords(books, now, wording),
                                      books.species.value(now.species).name.toLower())
                           : tr("Enter how many, and of which unit."));
    const bool known = books.suppliers.contains(now.supplier);
    m_record->setVisible(known);
    if (known)
        m_record->setText(tr("Their record: %1")
                              .arg(domain::scorecardWords(
                                  domain::scorecardOf(books, now.supplier, wording), wording)));
}

bool OrderSheet::save()
{
    if (m_context.readOnly())
        return false;
    m_notice->dismiss();
    m_fields->clearProblems();
    Problems problems;
    const WoodOrder wanted = order(&problems);
    if (!wanted.count)
        problems.append({QStringLiteral("count"), tr("Enter how many.")});
    if (!problems.isEmpty()) {
        showProblems(problems);
        return false;
    }
    const auto done = m_context.verbs.draftOrder(wanted);
    if (!done) {
        showProblems(done.problems());
        return false;
    }
    m_context.say(tr("The draft is kept. Send it when it is right; Undo takes it back."));
    Q_EMIT saved(done.value());
    return true;
}

void OrderSheet::showProblems(const Problems &problems)
{
    QStringList elsewhere;
    for (const Problem &problem : m_fields->showProblems(problems))
        elsewhere << problem.message;
    if (!elsewhere.isEmpty())
        m_notice->showProblem(elsewhere.join(QLatin1Char('\n')));
    for (const char *key : {"supplier", "species", "count", "sold_by", "price", "promised_moisture",
                            "promised", "note"}) {
        if (!m_fields->row(QString::fromLatin1(key))->hasProblem())
            continue;
        m_fields->editor(QString::fromLatin1(key))->inner()->setFocus(Qt::OtherFocusReason);
        return;
    }
}

} // namespace rickyard::views
