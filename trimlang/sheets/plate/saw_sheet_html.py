MADE_FROM = 'e69a9a4dadf3016a7557d3fb5594ecf9634d83eb58b6a7384030c09153f0188e'
from jinja2.runtime import LoopContext, Macro, Markup, Namespace, TemplateNotFound, TemplateReference, TemplateRuntimeError, Undefined, escape, identity, internalcode, markup_join, missing, str_join
name = 'saw-sheet.html'

def root(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    parent_template = None
    pass
    parent_template = environment.get_template('parts/page.html', 'saw-sheet.html')
    for name, parent_block in parent_template.blocks.items():
        context.blocks.setdefault(name, []).append(parent_block)
    yield from parent_template.root_render_func(context)

def block_kind(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    pass
    yield 'saw-sheet'

def block_body(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0__ = resolve('_')
    l_0_saw = resolve('saw')
    pass
    yield '<p class="how">'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Put the tape marks of the stick layouts on every stick first; then cuts can be made in any order, and each setting is made once.', _block_vars=_block_vars))
    yield ' '
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Test every setting on scrap.', _block_vars=_block_vars))
    yield ' '
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'The trim stands up, back against the fence, face towards you; left and right say which way the cut runs from the fence towards you.', _block_vars=_block_vars))
    yield '</p>\n<p class="count"><b>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), '{cuts} cuts, {changes} changes of the saw', cuts=environment.getattr((undefined(name='saw') if l_0_saw is missing else l_0_saw), 'cuts'), changes=environment.getattr((undefined(name='saw') if l_0_saw is missing else l_0_saw), 'changes'), _block_vars=_block_vars))
    yield '</b></p>\n'
    l_1_loop = missing
    for l_1_group, l_1_loop in LoopContext(environment.getattr((undefined(name='saw') if l_0_saw is missing else l_0_saw), 'groups'), undefined):
        _loop_vars = {}
        pass
        yield '<section class="group">\n<h2 class="set">'
        yield escape(environment.getattr(l_1_group, 'setting'))
        yield '</h2>\n'
        if environment.getattr(l_1_group, 'lay'):
            pass
            yield '<p class="small">'
            yield escape(environment.getattr(l_1_group, 'lay'))
            yield '</p>'
        yield '<table class="strokes">\n<thead><tr><th scope="col">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'done', _loop_vars=_loop_vars))
        yield '</th><th scope="col">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'stick', _loop_vars=_loop_vars))
        yield '</th><th scope="col" class="number">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'mark', _loop_vars=_loop_vars))
        yield '</th><th scope="col">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'makes', _loop_vars=_loop_vars))
        yield '</th></tr></thead>\n<tbody>\n'
        l_2_loop = missing
        for l_2_stroke, l_2_loop in LoopContext(environment.getattr(l_1_group, 'strokes'), undefined):
            _loop_vars = {}
            pass
            yield '<tr><td class="tickbox"><input type="checkbox" data-tick="saw:'
            yield escape(environment.getattr(l_1_group, 'lay'))
            yield ':'
            yield escape(environment.getattr(l_1_group, 'setting'))
            yield ':'
            yield escape(environment.getattr(l_2_loop, 'index'))
            yield '" aria-label="'
            yield escape(environment.getattr(l_2_stroke, 'ends'))
            yield '"></td><td>'
            yield escape(environment.getattr(l_2_stroke, 'stick'))
            yield '</td><td class="number"><b>'
            yield escape(environment.getattr(l_2_stroke, 'mark'))
            yield '</b></td><td>'
            yield escape(environment.getattr(l_2_stroke, 'ends'))
            yield '</td></tr>\n'
        l_2_loop = l_2_stroke = missing
        yield '</tbody>\n</table>\n</section>\n'
    l_1_loop = l_1_group = missing
    if environment.getattr((undefined(name='saw') if l_0_saw is missing else l_0_saw), 'copes'):
        pass
        yield '<section class="group">\n<h2>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Then cope', _block_vars=_block_vars))
        yield '</h2>\n<ul class="copes">\n'
        l_1_loop = missing
        for l_1_cope, l_1_loop in LoopContext(environment.getattr((undefined(name='saw') if l_0_saw is missing else l_0_saw), 'copes'), undefined):
            _loop_vars = {}
            pass
            yield '<li><label><input type="checkbox" data-tick="cope:'
            yield escape(environment.getattr(l_1_loop, 'index'))
            yield '"> '
            yield escape(l_1_cope)
            yield '</label></li>\n'
        l_1_loop = l_1_cope = missing
        yield '</ul>\n</section>\n'
    yield '<ul class="cautions">\n<li>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Let the blade stand before you change a setting; take the power off before you touch the blade.', _block_vars=_block_vars))
    yield '</li>\n<li>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), "The saw maker's manual comes before anything printed here.", _block_vars=_block_vars))
    yield '</li>\n</ul>\n'

def block_script(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0_script = resolve('script')
    pass
    yield '<script>'
    yield escape((undefined(name='script') if l_0_script is missing else l_0_script))
    yield '</script>'

blocks = {'kind': block_kind, 'body': block_body, 'script': block_script}
debug_info = '1=12&2=17&3=27&4=38&5=44&6=47&8=51&9=53&11=59&13=68&14=72&20=89&22=92&24=95&25=99&31=106&32=108&35=111'
