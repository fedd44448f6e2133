#include "views/wood/receiving_groups.h"

#include "models/domain/plan/order_life.h"
#include "models/domain/quantities/units.h"
#include "models/domain/wood/sale.h"
#include "views/records/field_editor.h"
#include "views/records/field_set.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/field_row.h"
#include "views/widgets/text_label.h"
#include "views/wood/stack_fields.h"
#include "views/wood/wood_words.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::Lot;
using domain::Measure;
using domain::SellUnit;
using domain::TableId;

namespace {

// Two or more fields side by side, each as high as it needs.
QGridLayout *gridOf(const QVector<QWidget *> &fields, int across)
{
    auto *grid = new QGridLayout;
    for (int i = 0; i < fields.size(); ++i) {
        grid->addWidget(fields.at(i), i / across, i % across, Qt::AlignTop);
        grid->setHorizontalSpacing(theme(fields.at(i)).space(3));
        grid->setVerticalSpacing(theme(fields.at(i)).space(2));
    }
    for (int i = 0; i < across; ++i)
        grid->setColumnStretch(i, 1);
    return grid;
}

} // namespace

QString refusalOf(const domain::Species &species)
{
    if (!species.neverBurn)
        return {};
    QString reason = species.neverBurnReason.trimmed();
    while (reason.endsWith(QLatin1Char('.')))
        reason.chop(1);
    return reason.isEmpty()
               ? PaidGroup::tr("%1 is never burned for food. Send it back.").arg(species.name)
               : PaidGroup::tr("%1 is never burned for food: %2. Send it back.")
                     .arg(species.name, reason);
}

PaidGroup::PaidGroup(PageContext &context, FieldSet &fields, QWidget *parent)
    : Card(tr("What was paid for"), parent), m_context(context), m_fields(fields),
      m_order(new QComboBox), m_holds(new TextLabel(QString(), TextStyle::BodyStrong))
{
    const Theme &look = theme(this);
    body()->setSpacing(look.space(2));
    m_order->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_order->setMinimumContentsLength(8);
    m_order->setAccessibleName(tr("Open order"));
    m_orderRow = new FieldRow(tr("Open order"), m_order);
    body()->addWidget(m_orderRow);
    body()->addLayout(
        gridOf({fields.add(QStringLiteral("supplier")), fields.add(QStringLiteral("species")),
                fields.add(QStringLiteral("paid_count"), tr("How many")),
                fields.add(QStringLiteral("paid_unit"), tr("Of which unit"))},
               2));
    m_holds->setWordWrap(true);
    body()->addWidget(m_holds);
    body()->addLayout(
        gridOf({fields.add(QStringLiteral("stick_length")), fields.add(QStringLiteral("price")),
                fields.add(QStringLiteral("promised_moisture")),
                fields.add(QStringLiteral("bundle_volume"))},
               2));
    connect(m_order, &QComboBox::activated, this, &PaidGroup::orderChosen);
}

void PaidGroup::start(const Lot &lot)
{
    m_refusal.clear();
    m_order->clear();
    m_order->addItem(tr("None"), qint64{0});
    const auto &orders = m_context.books().orders;
    for (const domain::WoodOrder &order : orders)
        if (domain::orderIsOpen(order))
            m_order->addItem(domain::titleOf(m_context.books(), TableId::WoodOrder, order.id),
                             order.id);
    m_order->setCurrentIndex(qMax(0, m_order->findData(lot.order.value_or(0))));
    m_orderRow->setVisible(m_order->count() > 1);
}

std::optional<domain::RecordId> PaidGroup::order() const
{
    const qint64 id = m_order->currentData().toLongLong();
    return id == 0 ? std::nullopt : std::optional(id);
}

QString PaidGroup::holds() const
{
    return m_holds->text();
}

void PaidGroup::refresh(const Lot &lot)
{
    const bool metric = m_context.books().yard().metric;
    m_fields.row(QStringLiteral("bundle_volume"))->setVisible(lot.paidUnit == SellUnit::Bundle);
    m_fields.row(QStringLiteral("stick_length"))
        ->setHelp(lot.paidUnit != SellUnit::FaceCord ? QString()
                  : lot.stickLength                  ? tr("A face cord is 4 × 8 ft × this.")
                                    : tr("A face cord is 4 × 8 ft × this; 16 in until it is "
                                         "measured."));
    const auto paid = domain::paidFor(lot);
    m_holds->setText(paid ? domain::soldWords(*paid, metric, woodLocale()) : QString());
    m_holds->setVisible(!m_holds->text().isEmpty());
    m_fields.row(QStringLiteral("promised_moisture"))
        ->setHelp(lot.promisedMoisture ? bothBases(*lot.promisedMoisture)
                                       : tr("Ask which basis: dry is water over dry wood."));
    const QString refusal = refusalOf(m_context.books().species.value(lot.species));
    if (refusal != m_refusal)
        m_fields.row(QStringLiteral("species"))->setProblem(refusal);
    m_refusal = refusal;
}

CameGroup::CameGroup(PageContext &context, FieldSet &fields, QWidget *parent)
    : Card(tr("What came"), parent), m_fields(fields), m_stacks(new StackFields(context)),
      m_claimed(new TextLabel(tr("The amount paid for is taken as true until it is measured."),
                              TextStyle::Body, Role::InkMuted)),
      m_mould(new QCheckBox(tr("Mould seen: put it on hold"))),
      m_mouldCaution(new CautionNote(tr("Mouldy wood stays out of the fire and away from food. "
                                        "Wear a mask when moving it; brushing it off settles "
                                        "nothing.")))
{
    body()->setSpacing(theme(this).space(2));
    body()->addWidget(fields.add(QStringLiteral("measured_by")));
    m_stacksRow = new FieldRow(tr("Stacks"), m_stacks);
    body()->addWidget(m_stacksRow);
    body()->addWidget(fields.add(QStringLiteral("loose_volume")));
    body()->addWidget(fields.add(QStringLiteral("weight")));
    m_claimed->setWordWrap(true);
    body()->addWidget(m_claimed);
    m_mould->setAccessibleName(tr("Mould seen: put the lot on hold"));
    body()->addWidget(m_mould);
    m_mouldCaution->setVisible(false);
    body()->addWidget(m_mouldCaution);
    connect(m_mould, &QCheckBox::toggled, m_mouldCaution, &QWidget::setVisible);
    connect(m_mould, &QCheckBox::toggled, this, &CameGroup::edited);
    connect(m_stacks, &StackFields::edited, this, [this] {
        // A size of nothing is said at once; what is not typed yet is no slip.
        QString problem;
        (void)m_stacks->stacks(&problem, StackFields::Stage::Typing);
        m_stacksRow->setProblem(problem);
        Q_EMIT edited();
    });
}

void CameGroup::start(const Lot &lot)
{
    m_stacksRow->clearProblem();
    m_mould->setChecked(lot.hold);
    m_stacks->setStickLength(lot.stickLength);
    m_stacks->show(lot.stacks);
    m_stacks->setStickLength(lot.stickLength);
}

void CameGroup::refresh(const Lot &lot)
{
    m_stacksRow->setVisible(lot.measuredBy == Measure::Stack);
    m_fields.row(QStringLiteral("loose_volume"))->setVisible(lot.measuredBy == Measure::Loose);
    m_fields.row(QStringLiteral("weight"))->setVisible(lot.measuredBy == Measure::Weighed);
    m_claimed->setVisible(lot.measuredBy == Measure::Claimed);
    m_stacks->setStickLength(lot.stickLength);
}

KeepGroup::KeepGroup(FieldSet &fields, QWidget *parent) : Card(tr("Where it goes"), parent)
{
    body()->setSpacing(theme(this).space(2));
    body()->addLayout(
        gridOf({fields.add(QStringLiteral("name")), fields.add(QStringLiteral("received")),
                fields.add(QStringLiteral("place")), fields.add(QStringLiteral("cover")),
                fields.add(QStringLiteral("origin"), tr("Where it was cut")),
                fields.add(QStringLiteral("certificate"))},
               2));
    body()->addWidget(new CautionNote(
        tr("Firewood carries pests. Before it crosses a state line check the state's rule, and "
           "keep the certificate with the lot. Stack it away from the pits, from buildings and "
           "from whatever is lit.")));
}

} // namespace rickyard::views
