// The groups of the receiving sheet: what was paid for, what came, a sample of it, and where it
// goes. Their fields belong to one set, so that the sheet reads them as one lot.
#pragma once

#include "views/page.h"
#include "views/widgets/card.h"

#include <optional>

class QBoxLayout;
class QCheckBox;
class QComboBox;

namespace rickyard::views {

class CautionNote;
class FieldRow;
class FieldSet;
class MeterFields;
class PieceChips;
class StackFields;
class TextLabel;

// Why a wood is refused at the truck; empty: it is not.
QString refusalOf(const domain::Species &species);

// Supplier, open order, species, amount with its unit, price and promise.
class PaidGroup : public Card
{
    Q_OBJECT

public:
    PaidGroup(PageContext &context, FieldSet &fields, QWidget *parent = nullptr);

    void start(const domain::Lot &lot);
    // What the figures hold, and why the wood is refused.
    void refresh(const domain::Lot &lot);
    [[nodiscard]] std::optional<domain::RecordId> order() const;
    [[nodiscard]] QComboBox &orders() const { return *m_order; }
    [[nodiscard]] QString holds() const; // "1 face cord (42.7 ft³)"

Q_SIGNALS:
    void orderChosen();

private:
    PageContext &m_context;
    FieldSet &m_fields;
    QComboBox *m_order;
    FieldRow *m_orderRow = nullptr;
    TextLabel *m_holds;
    QString m_refusal;
};

// How it was measured, and the measures of that way alone.
class CameGroup : public Card
{
    Q_OBJECT

public:
    CameGroup(PageContext &context, FieldSet &fields, QWidget *parent = nullptr);

    void start(const domain::Lot &lot);
    void refresh(const domain::Lot &lot);
    [[nodiscard]] StackFields &stacks() const { return *m_stacks; }
    [[nodiscard]] FieldRow &stacksRow() const { return *m_stacksRow; }
    [[nodiscard]] QCheckBox &mould() const { return *m_mould; }

Q_SIGNALS:
    void edited();

private:
    FieldSet &m_fields;
    StackFields *m_stacks;
    FieldRow *m_stacksRow = nullptr;
    TextLabel *m_claimed;
    QCheckBox *m_mould;
    CautionNote *m_mouldCaution;
};

// Splits on the scale, and pieces under the meter.
class SampleGroup : public Card
{
    Q_OBJECT

public:
    SampleGroup(PageContext &context, FieldSet &fields, QWidget *parent = nullptr);

    void start(domain::RecordId provisional);
    // Scale above meter, where there is no room side by side.
    void setNarrow(bool narrow);
    [[nodiscard]] PieceChips &weights() const { return *m_weights; }
    [[nodiscard]] MeterFields &meter() const { return *m_meter; }
    // Mean, number and spread of the splits weighed.
    void weighInto(domain::Lot &lot) const;
    [[nodiscard]] QString weightsText() const;

Q_SIGNALS:
    void edited();
    void escaped();

private:
    QWidget *buildWeights(FieldSet &fields);
    [[nodiscard]] QString judge(const QString &text, std::optional<double> value) const;
    void showWeights();

    PageContext &m_context;
    QBoxLayout *m_columns;
    PieceChips *m_weights;
    TextLabel *m_weighed;
    MeterFields *m_meter;
};

// Name, day, place, cover, origin and certificate, with the cautions of moving and storing wood.
class KeepGroup : public Card
{
    Q_OBJECT

public:
    explicit KeepGroup(FieldSet &fields, QWidget *parent = nullptr);
};

} // namespace rickyard::views
