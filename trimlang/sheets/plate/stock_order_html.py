MADE_FROM = '2fca1c824356e8b8afb0a62a3734ddf224103fc7537af7e19d23095496dc6e78'
from jinja2.runtime import LoopContext, Macro, Markup, Namespace, TemplateNotFound, TemplateReference, TemplateRuntimeError, Undefined, escape, identity, internalcode, markup_join, missing, str_join
name = 'stock-order.html'

def root(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    parent_template = None
    l_0_lines = missing
    pass
    parent_template = environment.get_template('parts/page.html', 'stock-order.html')
    for name, parent_block in parent_template.blocks.items():
        context.blocks.setdefault(name, []).append(parent_block)
    def macro(l_1_caption, l_1_lines):
        t_1 = []
        l_1__ = resolve('_')
        if l_1_caption is missing:
            l_1_caption = undefined("parameter 'caption' was not provided", name='caption')
        if l_1_lines is missing:
            l_1_lines = undefined("parameter 'lines' was not provided", name='lines')
        pass
        t_1.extend((
            '<table class="order">\n<caption>',
            escape(l_1_caption),
            '</caption>\n<thead><tr><th scope="col" class="number">',
            escape(context.call((undefined(name='_') if l_1__ is missing else l_1__), 'count')),
            '</th><th scope="col">',
            escape(context.call((undefined(name='_') if l_1__ is missing else l_1__), 'what')),
            '</th><th scope="col" class="number">',
            escape(context.call((undefined(name='_') if l_1__ is missing else l_1__), 'each')),
            '</th><th scope="col" class="number">',
            escape(context.call((undefined(name='_') if l_1__ is missing else l_1__), 'cost')),
            '</th></tr></thead>\n<tbody>\n',
        ))
        for l_2_line in l_1_lines:
            _loop_vars = {}
            pass
            t_1.extend((
                '<tr><td class="number count">',
                escape(environment.getattr(l_2_line, 'count')),
                '</td><td>',
                escape(environment.getattr(l_2_line, 'what')),
                '</td><td class="number">',
                escape(environment.getattr(l_2_line, 'each')),
                '</td><td class="number">',
                escape(environment.getattr(l_2_line, 'cost')),
                '</td></tr>\n',
            ))
        l_2_line = missing
        t_1.append(
            '</tbody>\n</table>\n',
        )
        return concat(t_1)
    context.exported_vars.add('lines')
    context.vars['lines'] = l_0_lines = Macro(environment, macro, 'lines', ('caption', 'lines'), False, False, False, context.eval_ctx.autoescape)
    yield from parent_template.root_render_func(context)

def block_kind(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    pass
    yield 'stock-order'

def block_body(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0_order = resolve('order')
    l_0__ = resolve('_')
    l_0_lines = resolve('lines')
    pass
    for l_1_trim in environment.getattr((undefined(name='order') if l_0_order is missing else l_0_order), 'trims'):
        _loop_vars = {}
        pass
        yield '<section class="trim">\n<h2>'
        yield escape(environment.getattr(l_1_trim, 'trim'))
        yield '</h2>\n<p class="section">'
        yield escape(environment.getattr(l_1_trim, 'section'))
        yield '</p>\n'
        if environment.getattr(l_1_trim, 'lines'):
            pass
            yield escape(context.call((undefined(name='lines') if l_0_lines is missing else l_0_lines), context.call((undefined(name='_') if l_0__ is missing else l_0__), 'to buy', _loop_vars=_loop_vars), environment.getattr(l_1_trim, 'lines'), _loop_vars=_loop_vars))
        else:
            pass
            yield '<p>'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'nothing more to buy', _loop_vars=_loop_vars))
            yield '</p>\n'
        if environment.getattr(l_1_trim, 'shop'):
            pass
            yield escape(context.call((undefined(name='lines') if l_0_lines is missing else l_0_lines), context.call((undefined(name='_') if l_0__ is missing else l_0__), 'from the shop', _loop_vars=_loop_vars), environment.getattr(l_1_trim, 'shop'), _loop_vars=_loop_vars))
        yield '<dl class="facts">\n'
        if (not environment.getattr(l_1_trim, 'in_hand')):
            pass
            yield '<div><dt>'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'bought', _loop_vars=_loop_vars))
            yield '</dt><dd>'
            yield escape(environment.getattr(l_1_trim, 'bought'))
            yield '</dd></div>'
        yield '<div><dt>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'in the pieces', _loop_vars=_loop_vars))
        yield '</dt><dd>'
        yield escape(environment.getattr(l_1_trim, 'needed'))
        yield '</dd></div>\n<div><dt>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'spare allowance', _loop_vars=_loop_vars))
        yield '</dt><dd>'
        yield escape(environment.getattr(l_1_trim, 'spare'))
        yield '</dd></div>\n<div><dt>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'sticks cut', _loop_vars=_loop_vars))
        yield '</dt><dd>'
        yield escape(environment.getattr(l_1_trim, 'sticks'))
        yield '</dd></div>\n<div><dt>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'spare, left whole', _loop_vars=_loop_vars))
        yield '</dt><dd>'
        yield escape(environment.getattr(l_1_trim, 'whole'))
        yield '</dd></div>\n<div><dt>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'cost', _loop_vars=_loop_vars))
        yield '</dt><dd><b>'
        yield escape(environment.getattr(l_1_trim, 'cost'))
        yield '</b></dd></div>\n<div><dt>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'this plan is', _loop_vars=_loop_vars))
        yield '</dt><dd>'
        yield escape(environment.getattr(l_1_trim, 'status'))
        yield '</dd></div>\n<div><dt>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'not in the pieces', _loop_vars=_loop_vars))
        yield '</dt><dd>'
        yield escape(environment.getattr(l_1_trim, 'waste'))
        yield '</dd></div>\n'
        if environment.getattr(l_1_trim, 'saves'):
            pass
            yield '<div><dt>'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'saved on longest first', _loop_vars=_loop_vars))
            yield '</dt><dd>'
            yield escape(environment.getattr(l_1_trim, 'saves'))
            yield '</dd></div>\n<div><dt>'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'fewest sticks to buy', _loop_vars=_loop_vars))
            yield '</dt><dd>'
            yield escape(environment.getattr(l_1_trim, 'fewest'))
            yield '</dd></div>\n'
        if environment.getattr(l_1_trim, 'in_hand'):
            pass
            yield '<div><dt>'
            yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'in hand besides', _loop_vars=_loop_vars))
            yield '</dt><dd>'
            yield escape(environment.getattr(l_1_trim, 'in_hand'))
            yield '</dd></div>\n'
        yield '</dl>\n</section>\n'
    l_1_trim = missing
    if environment.getattr((undefined(name='order') if l_0_order is missing else l_0_order), 'supplies'):
        pass
        yield '<section class="trim">\n<h2>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Fixing and finishing', _block_vars=_block_vars))
        yield '</h2>\n'
        yield escape(context.call((undefined(name='lines') if l_0_lines is missing else l_0_lines), context.call((undefined(name='_') if l_0__ is missing else l_0__), 'to buy', _block_vars=_block_vars), environment.getattr((undefined(name='order') if l_0_order is missing else l_0_order), 'supplies'), _block_vars=_block_vars))
        yield '\n<dl class="facts">\n'
        for (l_1_what, l_1_need) in environment.getattr((undefined(name='order') if l_0_order is missing else l_0_order), 'needs'):
            _loop_vars = {}
            pass
            yield '<div><dt>'
            yield escape(l_1_what)
            yield '</dt><dd>'
            yield escape(l_1_need)
            yield '</dd></div>\n'
        l_1_what = l_1_need = missing
        yield '</dl>\n</section>\n'
    yield '<section class="sum">\n<h2>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Together', _block_vars=_block_vars))
    yield '</h2>\n<dl class="facts">\n'
    if environment.getattr((undefined(name='order') if l_0_order is missing else l_0_order), 'spent'):
        pass
        yield '<div><dt>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'trim, spent so far', _block_vars=_block_vars))
        yield '</dt><dd>'
        yield escape(environment.getattr((undefined(name='order') if l_0_order is missing else l_0_order), 'spent'))
        yield '</dd></div>\n<div><dt>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'trim, still to buy', _block_vars=_block_vars))
        yield '</dt><dd>'
        yield escape(environment.getattr((undefined(name='order') if l_0_order is missing else l_0_order), 'to_buy'))
        yield '</dd></div>\n'
    yield '<div><dt>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'trim', _block_vars=_block_vars))
    yield '</dt><dd>'
    yield escape(environment.getattr((undefined(name='order') if l_0_order is missing else l_0_order), 'trim_cost'))
    yield '</dd></div>\n<div><dt>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'fixing and finishing', _block_vars=_block_vars))
    yield '</dt><dd>'
    yield escape(environment.getattr((undefined(name='order') if l_0_order is missing else l_0_order), 'supply_cost'))
    yield '</dd></div>\n<div><dt>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'total', _block_vars=_block_vars))
    yield '</dt><dd class="total">'
    yield escape(environment.getattr((undefined(name='order') if l_0_order is missing else l_0_order), 'total'))
    if environment.getattr((undefined(name='order') if l_0_order is missing else l_0_order), 'unpriced'):
        pass
        yield ' '
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'and what has no price above', _block_vars=_block_vars))
    yield '</dd></div>\n<div><dt>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), "the trim's plan is", _block_vars=_block_vars))
    yield '</dt><dd>'
    yield escape(environment.getattr((undefined(name='order') if l_0_order is missing else l_0_order), 'status'))
    yield '</dd></div>\n<div><dt>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'lower bound', _block_vars=_block_vars))
    yield '</dt><dd>'
    yield escape(environment.getattr((undefined(name='order') if l_0_order is missing else l_0_order), 'bound'))
    yield '</dd></div>\n</dl>\n<p class="small">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), "Prices are the job file's own, without tax, delivery and sawing at the yard.", _block_vars=_block_vars))
    yield '</p>\n</section>\n'

blocks = {'kind': block_kind, 'body': block_body}
debug_info = '1=13&3=16&5=26&6=28&8=37&9=42&2=60&14=70&15=81&17=85&18=87&19=89&21=97&23=101&24=109&25=113&26=117&27=121&28=125&29=129&30=133&31=137&32=144&34=148&39=157&41=160&42=162&44=164&45=168&51=175&53=177&54=184&56=189&57=193&58=197&59=205&60=209&62=213'
