// One rick of a walk: what is measured on it, what the books say, and why they may differ.
#pragma once

#include "models/domain/records/books.h"
#include "models/domain/wood/count_drift.h"
#include "views/page.h"

class QComboBox;

namespace rickyard::views {

class FieldRow;
class StackFields;
class TextLabel;
class UnitLineEdit;

class CountRow : public QWidget
{
    Q_OBJECT

public:
    CountRow(PageContext &context, domain::RecordId lot, QWidget *parent = nullptr);

    void refresh(); // from the books
    void clear();
    // What is typed; missing while nothing is. `problem`: what cannot be read.
    [[nodiscard]] std::optional<domain::RickCount> count(QString *problem = nullptr) const;
    [[nodiscard]] const std::optional<domain::CountDrift> &drift() const { return m_drift; }
    [[nodiscard]] bool started() const;
    void showProblem(const QString &message);
    void focusFirst();

    [[nodiscard]] domain::RecordId lot() const { return m_lot; }
    [[nodiscard]] QComboBox &way() const { return *m_way; }
    [[nodiscard]] StackFields &stacks() const { return *m_stacks; }
    [[nodiscard]] UnitLineEdit &figure() const { return *m_figure; }
    [[nodiscard]] FieldRow &fieldRow() const { return *m_row; }
    [[nodiscard]] QString words() const; // books, count and drift
    [[nodiscard]] QString causes() const;
    void setHairline(bool shown);

Q_SIGNALS:
    void edited();

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;
    void paintEvent(QPaintEvent *event) override;

private:
    void build();
    void showWay();
    void compare();
    [[nodiscard]] std::optional<domain::Moisture> moistureNow() const;
    [[nodiscard]] std::optional<domain::CountDrift> workOut() const;
    void watchKeys();

    PageContext &m_context;
    domain::RecordId m_lot;
    bool m_hairline = false;
    std::optional<domain::CountDrift> m_drift; // of what is typed, where it is whole
    TextLabel *m_place = nullptr;
    TextLabel *m_name = nullptr;
    QComboBox *m_way = nullptr;
    FieldRow *m_row = nullptr;
    StackFields *m_stacks = nullptr;
    UnitLineEdit *m_figure = nullptr; // splits or weight
    TextLabel *m_words = nullptr;
    TextLabel *m_basis = nullptr;
    QVector<TextLabel *> m_causes; // likeliest first
};

} // namespace rickyard::views
