// The check of a delivery in large words, with its reasons below: what it says while the truck
// still stands there.
#pragma once

#include "models/domain/wood/delivery.h"

#include <QVector>
#include <QWidget>

class QVBoxLayout;

namespace rickyard::views {

class Numeral;
class SentenceLabel;
class StatusPill;
class TextLabel;

class DeliveryVerdict : public QWidget
{
    Q_OBJECT

public:
    explicit DeliveryVerdict(QWidget *parent = nullptr);

    void show(const domain::DeliveryCheck &check, const domain::Wording &wording);
    [[nodiscard]] QString sentence() const;
    [[nodiscard]] QString reasons() const; // one a line

    // As high as its words at this width, and no higher.
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    void showSentence(const domain::Headline &headline);
    void showReasons(const QVector<domain::Reason> &reasons);

    StatusPill *m_pill;
    SentenceLabel *m_sentence;
    Numeral *m_share;
    struct Finding {
        TextLabel *label;
        TextLabel *value;
    };
    QVector<Finding> m_findings;
    QVBoxLayout *m_column;
};

} // namespace rickyard::views
