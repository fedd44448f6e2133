// A moisture reading taken with the meter in one hand: a number, Enter, the next piece. Mean and
// spread stand beside it on both bases as the pieces come in.
#pragma once

#include "models/domain/records/books.h"
#include "views/page.h"

class QComboBox;
class QPushButton;

namespace rickyard::views {

class FieldRow;
class FlowLayout;
class TextLabel;
class UnitLineEdit;

class ReadingEntry : public QWidget
{
    Q_OBJECT

public:
    explicit ReadingEntry(PageContext &context, QWidget *parent = nullptr);

    void start(domain::RecordId lot);
    [[nodiscard]] domain::MeterBasis basis() const;
    // As the meter showed them, in per cent.
    [[nodiscard]] const QVector<double> &shown() const { return m_shown; }
    [[nodiscard]] domain::PieceMoistures pieces() const; // dry basis
    [[nodiscard]] UnitLineEdit *field() const { return m_field; }
    [[nodiscard]] QString summary() const;

Q_SIGNALS:
    void saved(qint64 id);
    void closed();

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    void build();
    void takePiece();
    void dropPiece(int index);
    void showPieces();
    void showSummary();
    void save();

    PageContext &m_context;
    domain::RecordId m_lot = 0;
    QVector<double> m_shown;
    UnitLineEdit *m_field = nullptr;
    FieldRow *m_row = nullptr;
    QComboBox *m_face = nullptr;
    FlowLayout *m_chips = nullptr;
    QWidget *m_chipHolder = nullptr;
    TextLabel *m_mean = nullptr;
    TextLabel *m_spread = nullptr;
    QPushButton *m_save = nullptr;
};

} // namespace rickyard::views
