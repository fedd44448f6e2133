// Numbers taken one after the other with busy hands: a number, Enter, the next. What was taken
// stands below as small buttons that take it away again; Backspace in the empty field takes the
// last one away. The figures are what the instrument showed: another unit changes their meaning
// only.
#pragma once

#include <QVector>
#include <QWidget>

#include <functional>
#include <optional>

namespace rickyard::views {

class FieldRow;
class FlowLayout;
class UnitLineEdit;

class PieceChips : public QWidget
{
    Q_OBJECT

public:
    PieceChips(const QString &label, const QStringList &units, QWidget *parent = nullptr);

    [[nodiscard]] UnitLineEdit *field() const { return m_field; }
    [[nodiscard]] FieldRow *row() const { return m_row; }
    [[nodiscard]] const QVector<double> &values() const { return m_values; }
    [[nodiscard]] bool isEmpty() const;
    void clear();
    [[nodiscard]] QString asTyped() const; // "27 28.5 % wet"
    // The number of a text in the current unit; missing when it is none.
    void setReader(std::function<std::optional<double>(const QString &)> read);
    // Why a text with its number is refused; empty: it is taken.
    void setJudge(std::function<QString(const QString &, std::optional<double>)> judge);
    // Figures to be marked with "≈", which the caller explains.
    void setMarked(std::function<bool(double)> marked);
    // Takes what stands in the field; false: it was refused, and stays there.
    bool settle();
    void refresh(); // the marks may have changed

Q_SIGNALS:
    void changed();
    void escaped();

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    bool take();
    void drop(int index);
    void showPieces();

    QVector<double> m_values;
    std::function<std::optional<double>(const QString &)> m_read;
    std::function<QString(const QString &, std::optional<double>)> m_judge;
    std::function<bool(double)> m_marked;
    UnitLineEdit *m_field = nullptr;
    FieldRow *m_row = nullptr;
    QWidget *m_holder = nullptr;
    FlowLayout *m_chips = nullptr;
};

} // namespace rickyard::views
