// A new order, by hand or from a proposal: supplier, wood, amount in the supplier's unit, price,
// moisture and day wished. What the supplier's record says stands beside the choice.
#pragma once

#include "models/domain/records/books.h"
#include "views/page.h"

class QPushButton;

namespace rickyard::views {

class FieldSet;
class NoticeBar;
class TextLabel;

class OrderSheet : public QWidget
{
    Q_OBJECT

public:
    explicit OrderSheet(PageContext &context, QWidget *parent = nullptr);

    // Fresh fields, from a proposal or with what is likely.
    void start(const domain::WoodOrder &order);
    void start();
    // Writes a draft through the verbs. False: messages stand at the fields, nothing typed is lost.
    bool save();
    [[nodiscard]] FieldSet &fields() const { return *m_fields; }
    [[nodiscard]] QString amount() const; // what the figures come to, in words

Q_SIGNALS:
    void saved(qint64 order);
    void closed();

private:
    void build();
    void heed(const QString &key);
    void takeSupplier();
    void takePrice();
    void refresh();
    [[nodiscard]] domain::WoodOrder order(domain::Problems *problems = nullptr) const;
    void showProblems(const domain::Problems &problems);

    PageContext &m_context;
    FieldSet *m_fields;
    TextLabel *m_amount = nullptr;
    TextLabel *m_record = nullptr;
    NoticeBar *m_notice = nullptr;
    QPushButton *m_save = nullptr;
    domain::Row m_base;
    bool m_priceTyped = false; // by a person: it follows the amount no more
};

// A draft of so many units of what a supplier sells, with their price, moisture and usual time.
domain::WoodOrder draftOf(const domain::Books &books, domain::RecordId supplier,
                          domain::RecordId species, double count, QDate today);

} // namespace rickyard::views
