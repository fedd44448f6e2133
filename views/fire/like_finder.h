// "What did we do last time, on this pit, in this weather, with this much meat?": a few fields, and
// the past cooks nearest to them.
#pragma once

#include "models/domain/fire/cook_likeness.h"
#include "views/page.h"

class QVBoxLayout;

namespace rickyard::views {

class FieldSet;
class TextLabel;

class LikeFinder : public QWidget
{
    Q_OBJECT

public:
    explicit LikeFinder(PageContext &context, QWidget *parent = nullptr);
    // Asks for what a cook was, and leaves that cook out.
    void setCook(domain::RecordId cook);
    [[nodiscard]] const QVector<domain::CookLikeness> &found() const { return m_found; }
    [[nodiscard]] FieldSet &fields() { return *m_fields; }

Q_SIGNALS:
    void chosen(qint64 cook);

private:
    void find();
    void addResult(const domain::CookLikeness &likeness);
    [[nodiscard]] QString wordsOf(domain::RecordId cook) const;

    PageContext &m_context;
    domain::RecordId m_cook = 0;
    FieldSet *m_fields;
    QVBoxLayout *m_results;
    QVector<domain::CookLikeness> m_found;
};

} // namespace rickyard::views
