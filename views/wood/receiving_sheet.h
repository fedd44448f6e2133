// A delivery received at the truck: what was paid for, what came and a sample of it, with the
// verdict beside it as it is typed. Saving is one step: the lot, its ledger entry, the reading
// and the order.
#pragma once

#include "models/domain/records/books.h"
#include "views/page.h"

#include <QTimer>

class QBoxLayout;
class QPushButton;
class QScrollArea;

namespace rickyard::views {

class CameGroup;
class DeliveryVerdict;
class FieldSet;
class InlineQuestion;
class KeepGroup;
class NoticeBar;
class PaidGroup;
class SampleGroup;

class ReceivingSheet : public QWidget
{
    Q_OBJECT

public:
    explicit ReceivingSheet(PageContext &context, QWidget *parent = nullptr);

    // A fresh sheet with what is likely to have come.
    void start(const domain::Row &defaults);
    // The lot as it stands on the sheet, under an id that no record has.
    [[nodiscard]] domain::Lot lot(domain::Problems *problems = nullptr) const;
    [[nodiscard]] std::optional<domain::MoistureReading> reading() const;
    [[nodiscard]] bool dirty() const;
    // Writes through the verbs. False: messages stand at the fields, and nothing typed is lost.
    bool save();
    // Asks when something was typed.
    void cancel();

    [[nodiscard]] FieldSet &fields() const { return *m_fields; }
    [[nodiscard]] PaidGroup &paid() const { return *m_paid; }
    [[nodiscard]] CameGroup &came() const { return *m_came; }
    [[nodiscard]] SampleGroup &sample() const { return *m_sample; }
    [[nodiscard]] DeliveryVerdict &verdict() const { return *m_verdict; }
    [[nodiscard]] InlineQuestion &question() const { return *m_question; }

Q_SIGNALS:
    void saved(qint64 lot);
    void closed();

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    void build();
    void arrange();
    QWidget *buildVerdict();
    void heed(const QString &key);
    void takeOrder();
    void takeSupplier();
    void nameIt();
    void refresh();
    void refreshChoices(const workspace::Changes &changes);
    [[nodiscard]] domain::Books provisional() const;
    void showProblems(const domain::Problems &problems);
    [[nodiscard]] domain::Problems slips() const;

    PageContext &m_context;
    FieldSet *m_fields;
    QBoxLayout *m_columns = nullptr;
    QScrollArea *m_scroll = nullptr;
    QWidget *m_side = nullptr;
    PaidGroup *m_paid = nullptr;
    CameGroup *m_came = nullptr;
    SampleGroup *m_sample = nullptr;
    KeepGroup *m_keep = nullptr;
    DeliveryVerdict *m_verdict = nullptr;
    NoticeBar *m_notice = nullptr;
    InlineQuestion *m_question = nullptr;
    QPushButton *m_save = nullptr;
    QTimer m_soon; // one verdict for a burst of keys
    domain::Row m_base;
    domain::Row m_begun; // as it stood untouched
    QString m_givenName; // by the sheet, until a person writes another
};

} // namespace rickyard::views
