// Stacks as the tape gives them: length, height and depth, one row a stack, with their volume.
#pragma once

#include "models/domain/records/books.h"
#include "views/page.h"

#include <optional>

class QPushButton;
class QVBoxLayout;

namespace rickyard::views {

class TextLabel;
class UnitLineEdit;

class StackFields : public QWidget
{
    Q_OBJECT

public:
    explicit StackFields(PageContext &context, QWidget *parent = nullptr);

    void show(const domain::StackSizes &stacks); // none: one empty row
    // The depth of a single row is the length of its sticks: fills depths that are still empty.
    void setStickLength(std::optional<domain::Length> length);
    // The stacks that are complete; what is wrong with the others, in words. While one is being
    // typed, what is still to come is no slip.
    enum class Stage { Typing, Done };
    [[nodiscard]] domain::StackSizes stacks(QString *problem = nullptr,
                                            Stage stage = Stage::Done) const;
    [[nodiscard]] QString asTyped() const; // "8 ft × 4 ft × 16 in; …"
    [[nodiscard]] bool isEmpty() const;
    [[nodiscard]] QVector<UnitLineEdit *> edits() const; // length, height, depth of each
    void addStack();

Q_SIGNALS:
    void edited();

private:
    struct Sides {
        QWidget *box = nullptr;
        UnitLineEdit *length = nullptr;
        UnitLineEdit *height = nullptr;
        UnitLineEdit *depth = nullptr;
        QPushButton *remove = nullptr;
    };

    UnitLineEdit *side(const char *us, const char *metric, QWidget *into);
    void removeStack(QWidget *box);
    void rename();
    void showVolume();
    [[nodiscard]] bool empty(const Sides &sides) const;
    [[nodiscard]] std::optional<domain::StackSize> read(const Sides &sides, int number,
                                                        QString *problem, Stage stage) const;

    PageContext &m_context;
    QVector<Sides> m_rows;
    QVBoxLayout *m_column = nullptr;
    TextLabel *m_volume = nullptr;
    QPushButton *m_add = nullptr;
    std::optional<domain::Length> m_stickLength;
};

} // namespace rickyard::views
